import { useQuery } from '@tanstack/react-query';
import { closedMessages } from './closed-messages';
import { stillClosed, type ClosedHouse } from './closed-state';
import { useFormats } from './formats';
import { answer, api } from './http';
import { useMessages } from './messages';
import { useNow } from './now';
import { keys } from './query-keys';
import { useSites } from './setup-lists';

const AGAIN_MS = 60_000;

/** The houses of a site, or of all, that must not be entered now. */
export function useClosedHouses(site: string | undefined): readonly ClosedHouse[] {
  const listed = useListed();
  return [...stillClosed(listed.data ?? [], useNow()).values()].filter(
    (each) => site === undefined || each.site === site,
  );
}

function useListed() {
  return useQuery({
    queryKey: keys.closedHouses(),
    queryFn: ({ signal }) => answer(api.GET('/api/treatments/closed-houses', { signal })),
    refetchInterval: AGAIN_MS,
  });
}

/** Says of a house until when and by what it is closed; undefined while people may go in. */
export function useClosedWords(): (house: string, short?: 'short') => string | undefined {
  const t = useMessages(closedMessages);
  const format = useFormats();
  const sites = useSites().data ?? [];
  const listed = useListed();
  const closed = stillClosed(listed.data ?? [], useNow());
  return (house, short) => {
    const of = closed.get(house);
    if (!of) return undefined;
    const timeZone = sites.find(({ code }) => code === of.site)?.timeZone;
    return (short ? t.closedShort : t.closed)(format.dateTime(of.until, timeZone), of.product);
  };
}

/** The same as a note; nothing while people may go in. */
export function ClosedHouseNote({ house }: { house: string }) {
  const said = useClosedWords()(house);
  return said === undefined ? null : (
    <p className="rc-problem" role="status">
      ✕ {said}
    </p>
  );
}
