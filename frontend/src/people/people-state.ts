import { sameGrants } from './grants-state';
import type { AuditLine, ChangedPerson, Grant, KeyView, NewPerson, PersonView, Role } from './people-types';
import { isSignInName, passwordFault, type PasswordFault } from './sign-in-state';

/** The forms for people and keys as data, and what the lists show. */

export interface PersonDraft {
  readonly name: string;
  readonly displayName: string;
  readonly password: string;
  readonly grants: readonly Grant[];
}

export const NEW_PERSON: PersonDraft = { name: '', displayName: '', password: '', grants: [] };

export type PersonFaults = Readonly<{
  name?: 'needed' | 'name' | 'taken';
  displayName?: 'needed';
  password?: PasswordFault;
}>;

export function checkedNew(
  draft: PersonDraft,
  taken: readonly PersonView[],
): { readonly person: NewPerson } | { readonly faults: PersonFaults } {
  const [name, displayName] = [draft.name.trim(), draft.displayName.trim()];
  // A telephone begins words with a capital, so the server tells names apart without case.
  const isTaken = taken.some((each) => each.name.toLowerCase() === name.toLowerCase());
  const password = passwordFault(draft.password, name);
  const faults: PersonFaults = {
    ...(name === ''
      ? { name: 'needed' as const }
      : !isSignInName(name)
        ? { name: 'name' as const }
        : isTaken
          ? { name: 'taken' as const }
          : {}),
    ...(displayName === '' ? { displayName: 'needed' as const } : {}),
    ...(password ? { password } : {}),
  };
  if (Object.keys(faults).length > 0) return { faults };
  return { person: { name, displayName, password: draft.password, grants: draft.grants } };
}

/** What to send for a person whose form was changed; `undefined` when there is nothing to save. */
export function changeOf(
  person: PersonView,
  displayName: string,
  grants: readonly Grant[],
  active: boolean,
): ChangedPerson | undefined {
  const name = displayName.trim();
  const same = name === person.displayName && active === person.active && sameGrants(grants, person.grants);
  return same ? undefined : { displayName: name, grants, active };
}

/** Those who can sign in first, each part by name. */
export function shownPeople(people: readonly PersonView[], text: string): readonly PersonView[] {
  const wanted = text.trim().toLowerCase();
  return people
    .filter(({ name, displayName }) => `${name} ${displayName}`.toLowerCase().includes(wanted))
    .sort((a, b) => Number(b.active) - Number(a.active) || a.displayName.localeCompare(b.displayName));
}

/** Keys that work first, the newest on top. */
export function shownKeys(keys: readonly KeyView[]): readonly KeyView[] {
  return [...keys].sort(
    (a, b) => Number(Boolean(a.endedAt)) - Number(Boolean(b.endedAt)) || b.createdAt.localeCompare(a.createdAt),
  );
}

/** Pages follow one another by time, so a line at the seam may come twice. */
export function linesOf(pages: readonly (readonly AuditLine[])[]): readonly AuditLine[] {
  const seen = new Set<string>();
  return pages.flat().filter((line) => {
    const text = JSON.stringify(line);
    return seen.has(text) ? false : seen.add(text);
  });
}

/** Lines whose kind says all: what the server adds is its own English. */
const SAID_BY_KIND: ReadonlySet<string> = new Set([
  'sign-in-failed',
  'password-changed',
  'password-not-changed',
  'first-owner',
  'first-owner-refused',
]);
const ROLES_AT = /(?:\b(?:SALES|PRODUCTION|MANAGER|OWNER|DEVICE|PARTNER)\b(?:@[^\s,]+)? ?)+/;

/** What a line of the audit list is about, with roles and "switched off" in the reader's words. */
export function detailOf({ what, detail }: AuditLine, role: (role: Role) => string, switchedOff: string): string {
  if (SAID_BY_KIND.has(what)) return '';
  const roles = (written: string) =>
    written
      .trim()
      .split(' ')
      .map((each) => each.split('@'))
      .map(([code, at]) => (at === undefined ? role(code as Role) : `${role(code as Role)} (${at})`))
      .join(', ');
  return detail.replace(ROLES_AT, roles).replace(', switched off', `, ${switchedOff}`);
}
