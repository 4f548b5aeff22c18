import { useCallback } from 'react';
import { useSearchParams } from 'react-router';

/** The site every screen is narrowed to, kept in the address as `site=`; undefined means all sites. */
export function useSiteFilter(): [site: string | undefined, choose: (site: string | undefined) => void] {
  const [params, setParams] = useSearchParams();
  const choose = useCallback(
    (site: string | undefined) =>
      setParams((before) => {
        const after = new URLSearchParams(before);
        if (site === undefined) after.delete('site');
        else after.set('site', site);
        return after;
      }),
    [setParams],
  );
  return [params.get('site') ?? undefined, choose];
}
