import { useSyncExternalStore } from 'react';
import { Button } from '@vaadin/react-components/Button.js';
import { useMessages } from './messages';
import { sharedMessages } from './shared-messages';
import './notices.css';

/**
 * Short words about what was just done, with its undo: `notice({ text: '12 lost', undo: () => … })`.
 * One with an undo stays until it is used, dismissed or pushed out by the third after it: time is not a fair limit.
 */
export interface Notice {
  readonly text: string;
  readonly undo?: () => void | Promise<void>;
  /** Takes the place of the one before it on the same topic, where each has its undo elsewhere too. */
  readonly topic?: string;
}

interface Shown extends Notice {
  readonly id: number;
}

const PLAIN_MS = 6_000;
const MOST = 3;
const listeners = new Set<() => void>();
let shown: readonly Shown[] = [];
let nextId = 1;

export function notice(what: Notice): void {
  const id = nextId++;
  const others = shown.filter(({ topic }) => topic === undefined || topic !== what.topic);
  put([...others, { ...what, id }].slice(-MOST));
  if (!what.undo) setTimeout(() => dismiss(id), PLAIN_MS);
}

export function Notices() {
  const t = useMessages(sharedMessages);
  const all = useSyncExternalStore(subscribe, () => shown);
  return (
    <div className="notices rc-no-print" role="status" aria-live="polite">
      {all.map(({ id, text, undo }) => (
        <div key={id} className="notice">
          <span>{text}</span>
          {undo && (
            <Button
              onClick={() => {
                dismiss(id);
                void undo();
              }}
            >
              {t.undo}
            </Button>
          )}
          <Button theme="tertiary" aria-label={t.dismiss} onClick={() => dismiss(id)}>
            ✕
          </Button>
        </div>
      ))}
    </div>
  );
}

function dismiss(id: number): void {
  put(shown.filter((each) => each.id !== id));
}

function put(next: readonly Shown[]): void {
  shown = next;
  for (const changed of listeners) changed();
}

function subscribe(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}
