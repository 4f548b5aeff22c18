import { useCallback, useEffect, useState } from 'react';
import { useSearchParams } from 'react-router';
import { FloorPerson } from '../people/floor-person';
import { OthersEntries } from '../people/others-entries';
import { useMay } from '../people/signed-in';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useSites } from '../shared/setup-lists';
import { FloorBatch } from './floor-batch';
import { FloorFind } from './floor-find';
import { lastUsedBatches, rememberBatches, rememberedSite, rememberSite } from './floor-memory';
import { floorMessages } from './floor-messages';
import { actionIn, remembering } from './floor-state';
import { handMessages } from './hand-messages';
import { HandReadings } from './hand-readings';
import { RefusedEntries } from './refused-entries';
import { RefusedReadings } from './refused-readings';
import './floor.css';

/**
 * The floor: pick a site once, find a batch, record what was seen. Where one stands is in the address (`site`, `batch`,
 * `do`), so that the telephone's back button goes back one step.
 */
export function FloorView() {
  const t = useMessages(floorMessages);
  const hand = useMessages(handMessages);
  useScreenTitle(t.title);
  const [params, setParams] = useSearchParams();
  const sites = useSites();
  const [remembered] = useState(rememberedSite);
  const only = sites.data?.length === 1 ? sites.data[0]?.code : undefined;
  const [restored, setRestored] = useState(false);
  const site = params.get('site') ?? only ?? (restored ? undefined : remembered);
  const batch = params.get('batch') ?? undefined;
  const mayRead = useMay('record', site);

  const go = useCallback(
    (change: Readonly<Record<string, string | undefined>>, replace = false) =>
      setParams(
        (before) => {
          const after = new URLSearchParams(before);
          for (const [name, value] of Object.entries(change)) {
            if (value === undefined) after.delete(name);
            else after.set(name, value);
          }
          return after;
        },
        { replace },
      ),
    [setParams],
  );
  useEffect(() => {
    // The remembered site goes into the address once; whoever then chooses "all sites" is asked.
    if (restored) return;
    setRestored(true);
    if (params.get('site') === null && remembered !== undefined && batch === undefined) go({ site: remembered }, true);
  }, [restored, remembered, batch, params, go]);
  useEffect(() => {
    if (params.get('site')) rememberSite(params.get('site') as string);
  }, [params]);

  const open = (id: string) => {
    rememberBatches(remembering(lastUsedBatches(), id));
    go({ batch: id, do: undefined, mend: undefined });
  };
  const timeZone = sites.data?.find(({ code }) => code === site)?.timeZone;
  const body = () => {
    if (batch !== undefined) {
      return (
        <FloorBatch
          key={batch}
          id={batch}
          action={actionIn(params.get('do'))}
          mends={params.get('mend') ?? undefined}
          choose={(action) => go({ do: action, mend: undefined }, action === undefined)}
          leave={() => go({ batch: undefined, do: undefined, mend: undefined })}
        />
      );
    }
    if (site !== undefined && params.get('do') === 'readings') {
      return (
        <HandReadings
          site={site}
          timeZone={timeZone}
          house={params.get('house') ?? undefined}
          choose={(house) => go({ house }, true)}
          leave={() => go({ do: undefined, house: undefined })}
        />
      );
    }
    if (site !== undefined) {
      return (
        <>
          {mayRead && (
            <button type="button" className="floor-button hand-button" onClick={() => go({ do: 'readings' })}>
              {hand.title}
            </button>
          )}
          <RefusedEntries timeZone={timeZone} />
          <RefusedReadings timeZone={timeZone} />
          <FloorFind key={site} site={site} open={open} />
        </>
      );
    }
    if (sites.isPending) return <Loading />;
    if (!sites.data) return <Failed failure={sites.error} retry={() => void sites.refetch()} />;
    return (
      <fieldset className="choices tall">
        <legend>{t.whichSite}</legend>
        {sites.data.map((each) => (
          <button key={each.code} type="button" className="floor-button" onClick={() => go({ site: each.code })}>
            {each.name}
          </button>
        ))}
      </fieldset>
    );
  };
  return (
    <div className="floor">
      {params.get('do') === null && (
        <div className="floor-top">
          <FloorPerson />
        </div>
      )}
      <OthersEntries />
      {body()}
    </div>
  );
}
