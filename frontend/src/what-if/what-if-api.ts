import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../shared/http';
import type { WhatIfWish } from '../shared/learning-types';
import { keys } from '../shared/query-keys';
import { isNothing, type WhatIfScope } from './what-if-state';

/** Asks what would become of dates and open trays. The server stores nothing, so asking again does no harm. */
export function useWhatIf(wish: WhatIfWish, { confidence, weeks }: WhatIfScope) {
  return useQuery({
    queryKey: keys.whatIf(wish, confidence, weeks),
    queryFn: () =>
      answer(
        api.POST('/api/what-if', {
          params: { query: { confidence: String(confidence), weeks: String(weeks) } },
          body: wish,
        }),
      ),
    enabled: !isNothing(wish),
    staleTime: 0,
    retry: false,
  });
}
