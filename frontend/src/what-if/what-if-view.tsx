import { useMemo, useRef, useState } from 'react';
import { useSearchParams } from 'react-router';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { Problem } from '../shared/problem';
import { Empty, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { useProblemWords } from '../shared/use-problem-words';
import { wallClock } from '../shared/zoned-time';
import { useWhatIf } from './what-if-api';
import { whatIfMessages } from './what-if-messages';
import { WhatIfOutcome } from './what-if-outcome';
import {
  draftOf,
  isNothing,
  scopeIn,
  wishIn,
  wishOf,
  withWish,
  type DraftFaults,
  type SetpointOf,
  type WishDraft,
  type ZoneOf,
} from './what-if-state';
import { WishForm } from './wish-form';
import './what-if.css';

/** Tries a set-point or a move without doing it: which dates, saleable trays and open trays would change. */
export function WhatIfView() {
  const t = useMessages(whatIfMessages);
  useScreenTitle(t.title);
  const houses = useHouses().data;
  const sites = useSites().data;
  // Times are of the clocks of each site, so the form waits until those are known.
  if (!houses || !sites) return <Loading />;
  const zoneOf: ZoneOf = (house) => {
    const site = houses.find(({ code }) => code === house)?.site;
    return sites.find(({ code }) => code === site)?.timeZone ?? sites[0]?.timeZone;
  };
  const setpointOf: SetpointOf = (house) => houses.find(({ code }) => code === house)?.mediumSetpointC ?? undefined;
  return <Trial zoneOf={zoneOf} setpointOf={setpointOf} />;
}

const NO_FAULTS: DraftFaults = new Map();

function Trial({ zoneOf, setpointOf }: { zoneOf: ZoneOf; setpointOf: SetpointOf }) {
  const refusals = useProblemWords();
  const t = useMessages(whatIfMessages);
  const [params, setParams] = useSearchParams();
  // Texts typed in °F stay °F while this form is open, whatever is switched elsewhere.
  const unit = useState(usePreferences().temperature)[0];
  const wish = useMemo(() => wishIn(params), [params]);
  const answer = useWhatIf(wish, scopeIn(params));
  const nextKey = useRef(1_000);
  const newLine = () => {
    const [date = '', time = ''] = wallClock(zoneOf(''), Date.now()).split('T');
    return { key: nextKey.current++, date, time };
  };
  const [draft, setDraft] = useState<WishDraft>(() => {
    if (!isNothing(wish)) return draftOf(wish, zoneOf, unit);
    const [date = '', time = ''] = wallClock(zoneOf(''), Date.now()).split('T');
    const batch = params.get('batch');
    return batch
      ? { setpoints: [], moves: [{ key: 0, batch, house: '', date, time }] }
      : { setpoints: [{ key: 0, house: params.get('house') ?? '', medium: '', date, time }], moves: [] };
  });
  const [faults, setFaults] = useState(NO_FAULTS);
  const [changed, setChanged] = useState(false);

  const ask = () => {
    const made = wishOf(draft, zoneOf, unit, setpointOf);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    setChanged(false);
    const next = withWish(params, made.wish);
    if (next.toString() === params.toString()) void answer.refetch();
    else setParams(next);
  };
  const refused = !changed && answer.error instanceof Problem ? answer.error : undefined;
  const faultOf = (path: string) => {
    const mine = faults.get(path);
    return mine ? t[mine] : refusals.faultOf(refused, path);
  };
  const besideFields = refused !== undefined && refused.fieldFaults.length > 0;
  return (
    <div className="rc-screen">
      <p className="wish-notice">{t.nothingStored}</p>
      <WishForm
        draft={draft}
        change={(next) => {
          setDraft(next);
          setFaults(NO_FAULTS);
          setChanged(true);
        }}
        faultOf={faultOf}
        unit={unit}
        ask={ask}
        asking={answer.isFetching}
        newLine={newLine}
      />
      {(faults.size > 0 || besideFields) && (
        <div className="rc-problem" role="alert">
          <p>✕ {t.checkLines}</p>
        </div>
      )}
      {answer.isError && !besideFields && !changed && <ProblemNote failure={answer.error} />}
      {isNothing(wish) && (
        <Empty title={t.empty}>
          <p>{t.emptyHelp}</p>
        </Empty>
      )}
      {changed && answer.data && <p className="rc-warning">▲ {t.changed}</p>}
      {!isNothing(wish) && answer.isFetching && !answer.data && <Loading />}
      {answer.data && !answer.isError && (
        <div className={changed || answer.isFetching ? 'wish-old' : undefined}>
          <WhatIfOutcome answer={answer.data} />
        </div>
      )}
    </div>
  );
}
