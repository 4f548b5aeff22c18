import { useEffect, useImperativeHandle, useLayoutEffect, useRef, type Ref } from 'react';
import { BoardGridDom } from './board-grid-dom';
import type { GridActions, GridContent, GridSpeech } from './board-grid-types';
import type { RowKey } from './board-state';
import './board-grid.css';

export interface BoardGridHandle {
  focusCell(row: RowKey, week: string): void;
  focusFirst(): void;
  scrollToTop(): void;
}

interface BoardGridProps {
  readonly content: GridContent;
  readonly speech: GridSpeech;
  readonly actions: GridActions;
  readonly handle: Ref<BoardGridHandle>;
}

/** Carries the drawn-by-hand table into the component tree; React knows nothing of its rows. */
export function BoardGrid({ content, speech, actions, handle }: BoardGridProps) {
  const host = useRef<HTMLDivElement>(null);
  const grid = useRef<BoardGridDom | undefined>(undefined);
  const latest = useRef(actions);
  const first = useRef({ speech });

  useLayoutEffect(() => {
    if (!host.current) return;
    grid.current = new BoardGridDom(host.current, first.current.speech, () => latest.current);
    return () => grid.current?.destroy();
  }, []);
  useEffect(() => {
    latest.current = actions;
  }, [actions]);
  useLayoutEffect(() => grid.current?.speak(speech), [speech]);
  useLayoutEffect(() => grid.current?.show(content), [content]);
  useImperativeHandle(handle, () => ({
    focusCell: (row, week) => grid.current?.focusCell(row, week),
    focusFirst: () => grid.current?.focusFirst(),
    scrollToTop: () => grid.current?.scrollToTop(),
  }));

  return <div ref={host} className="board-grid rc-no-print" />;
}
