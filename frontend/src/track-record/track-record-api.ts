import { useQuery, keepPreviousData } from '@tanstack/react-query';
import { at, getJson } from '../shared/http';
import type { TrackRecord } from '../shared/learning-types';
import { keys } from '../shared/query-keys';
import type { RecordFilter } from './track-record-state';

/** How earlier predictions turned out. Finished batches change seldom, so it is asked for when the screen opens. */
export function useTrackRecord({ leadDays, crop }: RecordFilter) {
  return useQuery({
    queryKey: keys.trackRecord(leadDays, crop),
    queryFn: ({ signal }) => getJson<TrackRecord>(at`/track-record`, { leadDays, crop }, signal),
    placeholderData: keepPreviousData,
  });
}
