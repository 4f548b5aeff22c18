import type { FirstOwner } from './people-types';

/** What the sign-in screens decide: where to go afterwards, what is wrong beside which field, how long to wait. */

/**
 * The address to come back to, if it is one of ours. Anything that could lead to another server, or back to the
 * sign-in itself, is not.
 */
export function nextIn(params: URLSearchParams): string | undefined {
  const next = params.get('next');
  // Browsers drop control characters from addresses and take a backslash for a slash.
  if (!next || !/^\/(?!\/)/.test(next) || /[\p{Cc}\\]/u.test(next)) return undefined;
  return /^\/sign-in(?![^/?#])/.test(next) ? undefined : next;
}

export function signInAddress(next: string): string {
  return next === '/' ? '/sign-in' : `/sign-in?${new URLSearchParams({ next })}`;
}

/** The sign-in page after somebody handed the device over. */
export function handOverAddress(next: string): string {
  return `/sign-in?${new URLSearchParams({ next, handed: 'over' })}`;
}

export function isHandOver(params: URLSearchParams): boolean {
  return params.get('handed') === 'over';
}

export interface SignInDraft {
  readonly name: string;
  readonly password: string;
}

export type SignInFault = 'needed' | 'wrong';
export type SignInFaults = Readonly<Partial<Record<keyof SignInDraft, SignInFault>>>;

/** A password may begin and end with a space; a name does not. */
export function checkedSignIn(draft: SignInDraft): { readonly body: SignInDraft } | { readonly faults: SignInFaults } {
  const name = draft.name.trim();
  if (name === '' || draft.password === '') {
    return {
      faults: {
        ...(name === '' ? { name: 'needed' as const } : {}),
        ...(draft.password === '' ? { password: 'needed' as const } : {}),
      },
    };
  }
  return { body: { name, password: draft.password } };
}

/** What an answer to a sign-in means. */
export type SignInRefusal =
  | { readonly kind: 'wrong' }
  | { readonly kind: 'locked'; readonly seconds: number }
  /** Anything else is said in the server's words. */
  | { readonly kind: 'other' };

export function signInRefusal(status: number, members: Readonly<Record<string, unknown>>): SignInRefusal {
  if (status === 401) return { kind: 'wrong' };
  if (status !== 429) return { kind: 'other' };
  const seconds = members['retryAfterSeconds'];
  return { kind: 'locked', seconds: typeof seconds === 'number' && seconds > 0 ? Math.ceil(seconds) : 1 };
}

/** Whole seconds left until `untilMs`; 0 when it is over. */
export function secondsLeft(untilMs: number, nowMs: number): number {
  return Math.max(0, Math.ceil((untilMs - nowMs) / 1000));
}

/** 0:07, 1:30, 62:05 */
export function clockOf(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

// --- Passwords and the first owner -------------------------------------------------------------------------------

/** The server's rules, said before somebody has to find out. */
export const LEAST_PASSWORD = 10;
/** Of UTF-8: its hash reads no further. */
const MOST_PASSWORD_BYTES = 72;

export type PasswordFault = 'needed' | 'short' | 'long' | 'is-name' | 'unequal';

export interface PasswordDraft {
  readonly password: string;
  readonly again: string;
}

/** What is wrong with a password for the person called `name`, as far as one can say without the server. */
export function passwordFault(password: string, name: string): PasswordFault | undefined {
  if (password === '') return 'needed';
  // Characters, not UTF-16 units: an accent or a picture counts as one.
  if ([...password].length < LEAST_PASSWORD) return 'short';
  if (new TextEncoder().encode(password).length > MOST_PASSWORD_BYTES) return 'long';
  return password.trim().toLowerCase() === name.trim().toLowerCase() ? 'is-name' : undefined;
}

export function passwordFaults(
  draft: PasswordDraft,
  name: string,
): Readonly<Partial<Record<keyof PasswordDraft, PasswordFault>>> {
  const fault = passwordFault(draft.password, name);
  if (fault) return { password: fault };
  if (draft.again !== draft.password) return { again: draft.again === '' ? 'needed' : 'unequal' };
  return {};
}

export interface OwnerDraft extends PasswordDraft {
  readonly secret: string;
  readonly name: string;
  readonly displayName: string;
}

export type OwnerFaults = Readonly<Partial<Record<keyof OwnerDraft, PasswordFault | 'name'>>>;

const NAME = /^[\p{L}\p{N}][\p{L}\p{N}._@-]{0,63}$/u;

/** A name to sign in with: no spaces, so that it can be typed with gloves and read over a telephone. */
export function isSignInName(text: string): boolean {
  return NAME.test(text.trim());
}

export function checkedOwner(draft: OwnerDraft): { readonly body: FirstOwner } | { readonly faults: OwnerFaults } {
  const [secret, name, displayName] = [draft.secret.trim(), draft.name.trim(), draft.displayName.trim()];
  const faults: OwnerFaults = {
    ...(secret === '' ? { secret: 'needed' as const } : {}),
    ...(name === '' ? { name: 'needed' as const } : isSignInName(name) ? {} : { name: 'name' as const }),
    ...(displayName === '' ? { displayName: 'needed' as const } : {}),
    ...passwordFaults(draft, name),
  };
  return Object.keys(faults).length > 0
    ? { faults }
    : { body: { secret, name, displayName, password: draft.password } };
}
