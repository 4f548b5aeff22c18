import { useQuery } from '@tanstack/react-query';
import { answer, api } from './http';
import { keys } from './query-keys';

/** What this server is and how one gets in: open to all. */
export function useAbout() {
  return useQuery({
    queryKey: keys.about(),
    queryFn: ({ signal }) => answer(api.GET('/api/about', { signal })),
    staleTime: Infinity,
  });
}
