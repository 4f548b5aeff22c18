import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { answer, api } from '../shared/http';
import { keys } from '../shared/query-keys';
import type { ChangedPerson, Grant, NewKeyView, NewPerson } from './people-types';

/** People, keys and the audit list, for owners. */
export function usePeople() {
  return useQuery({
    queryKey: keys.people(),
    queryFn: ({ signal }) => answer(api.GET('/api/people', { signal })),
  });
}

const at = <P extends object>(path: P) => ({ params: { path } });

/** Sent again after silence it is refused as a name already taken, so nobody is added twice. */
export const addPerson = (body: NewPerson) => answer(api.POST('/api/people', { body }));
export const changePerson = (name: string, body: ChangedPerson) =>
  answer(api.PUT('/api/people/{name}', { ...at({ name }), body }));
export const setPassword = (name: string, password: string) =>
  answer(api.POST('/api/people/{name}/password', { ...at({ name }), body: { password } }));
export const endSessionsOf = (name: string) => answer(api.DELETE('/api/people/{name}/sessions', at({ name })));

export function useAccessKeys() {
  return useQuery({
    queryKey: keys.accessKeys(),
    queryFn: ({ signal }) => answer(api.GET('/api/keys', { signal })),
  });
}

/** The document says that a key comes back, but not as what kind of content. */
export const makeKey = async (name: string, grants: readonly Grant[]): Promise<NewKeyView> =>
  (await answer(api.POST('/api/keys', { body: { name, grants } }))) as unknown as NewKeyView;
export const endKey = (id: string) => answer(api.DELETE('/api/keys/{id}', at({ id })));

const AUDIT_LINES = 100;

/** Newest first, a page at a time. */
export function useAudit() {
  return useInfiniteQuery({
    queryKey: keys.audit(),
    queryFn: ({ pageParam, signal }) =>
      answer(
        api.GET('/api/audit', {
          params: { query: { limit: AUDIT_LINES, ...(pageParam === undefined ? {} : { before: pageParam }) } },
          signal,
        }),
      ),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: (page) => (page.length < AUDIT_LINES ? undefined : page.at(-1)?.at),
    staleTime: 0,
  });
}

/** Newest first, a page at a time: those with `text` in who or what. */
export function useSetupChanges(text: string) {
  return useInfiniteQuery({
    queryKey: keys.setupChanges(text),
    queryFn: ({ pageParam, signal }) =>
      answer(
        api.GET('/api/setup-changes', {
          params: { query: { text, limit: AUDIT_LINES, ...(pageParam === undefined ? {} : { before: pageParam }) } },
          signal,
        }),
      ),
    initialPageParam: undefined as number | undefined,
    getNextPageParam: (page) => (page.length < AUDIT_LINES ? undefined : page.at(-1)?.id),
    placeholderData: (before) => before,
    staleTime: 0,
  });
}
