import type { Session } from './people-types';

/** What stands between the address and the screens. */
export type Gate =
  | { readonly kind: 'asking' }
  | { readonly kind: 'failed' }
  /** Nobody is signed in and nothing is on the screen yet: go and sign in. */
  | { readonly kind: 'shut' }
  | { readonly kind: 'open'; readonly session: Session }
  /** The session ended under the reader's hands: the screen stays as it is until somebody signs in. */
  | { readonly kind: 'ended'; readonly session: Session };

export interface Asked {
  /** The server's last answer; `null` is nobody, undefined is none yet. */
  readonly answer: Session | null | undefined;
  readonly failed: boolean;
  /** Whose screen has been shown since the page was loaded. */
  readonly shown: Session | undefined;
  /** Who used this device last. */
  readonly remembered: Session | undefined;
}

export function gateOf({ answer, failed, shown, remembered }: Asked): Gate {
  if (answer) return { kind: 'open', session: answer };
  if (answer === null) return shown ? { kind: 'ended', session: shown } : { kind: 'shut' };
  const known = shown ?? remembered;
  // While no answer has come, or none comes, the floor goes on: what a screen shows is asked for with the cookie, and entries are
  // kept on the device until the cookie has been checked.
  if (known) return { kind: 'open', session: known };
  return { kind: failed ? 'failed' : 'asking' };
}
