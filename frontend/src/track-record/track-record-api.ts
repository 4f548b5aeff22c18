import { useQuery, keepPreviousData } from '@tanstack/react-query';
import { answer, api } from '../shared/http';
import { keys } from '../shared/query-keys';
import type { RecordFilter } from './track-record-state';

/** How earlier predictions turned out. Finished batches change seldom, so it is asked for when the screen opens. */
export function useTrackRecord({ leadDays, crop }: RecordFilter) {
  return useQuery({
    queryKey: keys.trackRecord(leadDays, crop),
    queryFn: ({ signal }) => answer(api.GET('/api/track-record', { params: { query: { leadDays, crop } }, signal })),
    placeholderData: keepPreviousData,
  });
}
