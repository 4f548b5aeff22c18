import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { at, deleteAt, getJson, postJson, postPlainly, putJson } from '../shared/http';
import { peopleKeys } from './people-keys';
import type { AuditLine, ChangedPerson, Grant, KeyView, NewKeyView, NewPerson, PersonView } from './people-types';

/** People, keys and the audit list, for owners. */
export function usePeople() {
  return useQuery({
    queryKey: peopleKeys.people(),
    queryFn: ({ signal }) => getJson<readonly PersonView[]>(at`/people`, undefined, signal),
  });
}

export const addPerson = (person: NewPerson, key: string) => postJson<PersonView>(at`/people`, person, key);
export const changePerson = (name: string, change: ChangedPerson) => putJson<PersonView>(at`/people/${name}`, change);
export const setPassword = (name: string, password: string) =>
  postPlainly<undefined>(at`/people/${name}/password`, { password });
export const endSessionsOf = (name: string) => deleteAt(at`/people/${name}/sessions`);

export function useAccessKeys() {
  return useQuery({
    queryKey: peopleKeys.accessKeys(),
    queryFn: ({ signal }) => getJson<readonly KeyView[]>(at`/keys`, undefined, signal),
  });
}

export const makeKey = (name: string, grants: readonly Grant[]) => postPlainly<NewKeyView>(at`/keys`, { name, grants });
export const endKey = (id: string) => deleteAt(at`/keys/${id}`);

const AUDIT_LINES = 100;

/** Newest first, a page at a time. */
export function useAudit() {
  return useInfiniteQuery({
    queryKey: peopleKeys.audit(),
    queryFn: ({ pageParam, signal }) =>
      getJson<readonly AuditLine[]>(at`/audit`, { before: pageParam, limit: AUDIT_LINES }, signal),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: (page) => (page.length < AUDIT_LINES ? undefined : page.at(-1)?.at),
    staleTime: 0,
  });
}
