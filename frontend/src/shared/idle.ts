import { useEffect, useState } from 'react';

/** When the browser has nothing else to do, and after some seconds in any case. */
export function whenIdle(work: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(work, { timeout: 5_000 });
  else setTimeout(work, 1_000);
}

/** Whether what was read first has been drawn: what only stands around it may be asked for now. */
export function useIdle(): boolean {
  const [idle, setIdle] = useState(false);
  useEffect(() => whenIdle(() => setIdle(true)), []);
  return idle;
}
