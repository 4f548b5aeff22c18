/**
 * Short words about what was just done, with its undo: `notice({ text: '12 lost', undo: () => … })`. They go by
 * themselves, but not under the finger or while they have the focus: whoever reads one has the time to. An undo goes
 * with the screen it was made on; what can be undone has its undo beside it there as well.
 */
export interface Notice {
  readonly text: string;
  readonly undo?: () => void | Promise<void>;
  /** Takes the place of the one before it on the same topic, where each has its undo elsewhere too. */
  readonly topic?: string;
}

export interface Shown extends Notice {
  readonly id: number;
  /** The screen it was made on. */
  readonly screen: string;
}

const PLAIN_MS = 6_000;
const UNDO_MS = 10_000;
const MOST = 3;
const listeners = new Set<() => void>();
const timers = new Map<number, ReturnType<typeof setTimeout>>();
let shown: readonly Shown[] = [];
let nextId = 1;

export function notice(what: Notice, screen: string = screenNow()): void {
  const id = nextId++;
  const others = shown.filter(({ topic }) => topic === undefined || topic !== what.topic);
  put([...others, { ...what, id, screen }].slice(-MOST));
  release(id);
}

export function noticesNow(): readonly Shown[] {
  return shown;
}

/** Stays until it is released: somebody is reading it, or about to press. */
export function hold(id: number): void {
  clearTimeout(timers.get(id));
  timers.delete(id);
}

export function release(id: number): void {
  hold(id);
  const what = shown.find((each) => each.id === id);
  if (what)
    timers.set(
      id,
      setTimeout(() => dismiss(id), what.undo ? UNDO_MS : PLAIN_MS),
    );
}

export function dismiss(id: number): void {
  put(shown.filter((each) => each.id !== id));
}

/** Another screen is open: nothing of the one before can be undone from here. */
export function arrivedAt(screen: string): void {
  put(shown.filter(({ undo, screen: madeOn }) => !undo || madeOn === screen));
}

export function onNotices(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}

function screenNow(): string {
  return globalThis.location?.pathname ?? '';
}

function put(next: readonly Shown[]): void {
  if (next.length === shown.length && next.every((each, i) => each === shown[i])) return;
  for (const { id } of shown) if (!next.some((each) => each.id === id)) hold(id);
  shown = next;
  for (const changed of listeners) changed();
}
