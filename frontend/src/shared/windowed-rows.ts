import { useEffect, useState, type RefObject } from 'react';

/** The rows of a long list that are worth drawing: those in sight of their scroller, and some on either side. */
export interface RowWindow {
  readonly fromInclusive: number;
  readonly untilExclusive: number;
}

/** Rows are drawn in steps of this many, so that most scroll events change nothing. */
const STEP = 10;

export function windowAt(scrollTop: number, heightPx: number, rowPx: number, count: number): RowWindow {
  const first = Math.floor(scrollTop / rowPx / STEP) * STEP;
  const seen = Math.ceil(heightPx / rowPx);
  const untilExclusive = Math.min(count, first + seen + 2 * STEP);
  return { fromInclusive: Math.max(0, Math.min(first - STEP, untilExclusive - 1)), untilExclusive };
}

export function useWindowedRows(scroller: RefObject<HTMLElement | null>, count: number, rowPx: number): RowWindow {
  const [shown, setShown] = useState<RowWindow>(() => windowAt(0, 900, rowPx, count));
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const look = () => {
      const next = windowAt(element.scrollTop, element.clientHeight, rowPx, count);
      setShown((old) =>
        old.fromInclusive === next.fromInclusive && old.untilExclusive === next.untilExclusive ? old : next,
      );
    };
    look();
    element.addEventListener('scroll', look, { passive: true });
    const resized = new ResizeObserver(look);
    resized.observe(element);
    return () => {
      element.removeEventListener('scroll', look);
      resized.disconnect();
    };
  }, [scroller, count, rowPx]);
  // A list that has just become shorter must not be asked for rows it no longer has.
  return { fromInclusive: Math.min(shown.fromInclusive, count), untilExclusive: Math.min(shown.untilExclusive, count) };
}
