import { useEffect, useRef, type RefObject } from 'react';
import { useLocation } from 'react-router';
import type { BoardGridHandle } from './board-grid';

/** Whoever comes from the search goes on from what was found: the focus is on the first row. */
export function useFocusOnFound(rows: number, grid: RefObject<BoardGridHandle | null>): void {
  const { state, key } = useLocation() as { state: { found?: boolean } | null; key: string };
  const done = useRef<string>(undefined);
  useEffect(() => {
    if (!state?.found || done.current === key || rows === 0) return;
    done.current = key;
    if (grid.current) grid.current.focusFirst();
    else document.querySelector<HTMLElement>('.board-list a')?.focus();
  }, [state, key, rows, grid]);
}
