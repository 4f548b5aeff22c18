import { useEffect, useState, type ReactNode } from 'react';
import { Link, useLocation, useParams, useSearchParams } from 'react-router';
import type { BatchView } from '../shared/api-types';
import { AsOfBanner, AsOfControl, useAsOf } from '../shared/as-of';
import { useBatch } from '../shared/batch-queries';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { actionsFor, type Action } from '../floor/floor-state';
import { useMay } from '../people/signed-in';
import type { Undoing } from '../floor/undo-panel';
import { RefusedEntries } from '../floor/refused-entries';
import { useOutbox } from '../outbox/outbox';
import { waitingFor } from '../outbox/outbox-state';
import { BatchSince } from './batch-since';
import { StoryPart } from './batch-story';
import { lostFraction } from './batches-state';
import { DevelopmentPlots } from './development-plots';
import { NotComputed } from './faulty-batches';
import { LossesTable } from './losses-table';
import { OutlookPanel } from './outlook-panel';
import { ReasonPanel } from './reason-panel';
import { StepsPicture } from './steps-picture';
import { storyMessages } from './story-messages';
import './batch-view.css';

const EntryDialog = later(async () => (await import('./entry-dialog')).EntryDialog);
const UndoDialog = later(async () => (await import('./entry-dialog')).UndoDialog);
import '../floor/floor.css';

/** One batch: its figures, what became of its plants, what is expected of it, and everything recorded about it. */
export function BatchStory() {
  const { id = '' } = useParams();
  const t = useMessages(storyMessages);
  const [asOf] = useAsOf();
  const batch = useBatch(id, asOf);
  useScreenTitle(t.batch(id));
  useOpenedAnchor(batch.data !== undefined);

  if (batch.isPending) return <Loading />;
  // Also where figures from before are still at hand: they would be taken for those of now.
  if (asOf === undefined && batch.error instanceof Problem && batch.error.isNotComputed) {
    return <NotComputed id={id} />;
  }
  const failed = batch.error !== null && asOf !== undefined;
  if (!batch.data || failed) {
    return asOf !== undefined ? (
      <div className="rc-screen">
        <AsOfBanner timeZone={undefined} />
        {batch.error instanceof Problem && batch.error.status === 404 ? (
          <p>{t.notYetStuck}</p>
        ) : (
          <Failed failure={batch.error} retry={() => void batch.refetch()} />
        )}
      </div>
    ) : batch.error instanceof Problem && batch.error.status === 404 ? (
      <div className="rc-state" role="alert">
        <p>{t.unknown(id)}</p>
        <Link className="rc-link" to="/batches">
          {t.toList}
        </Link>
      </div>
    ) : (
      <Failed failure={batch.error} retry={() => void batch.refetch()} />
    );
  }
  return <Story batch={batch.data} asOf={asOf} staleSinceMs={batch.isError ? batch.dataUpdatedAt : undefined} />;
}

interface StoryProps {
  readonly batch: BatchView;
  /** The moment looked back to; undefined is now. */
  readonly asOf: string | undefined;
  readonly staleSinceMs: number | undefined;
}

function Story({ batch, asOf, staleSinceMs }: StoryProps) {
  const t = useMessages(storyMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const site = useSites().data?.find((each) => each.code === batch.site);
  const timeZone = site?.timeZone;
  const [action, setAction] = useState<Action>();
  const [undoing, setUndoing] = useState<Undoing>();
  const [since, setSince] = useSince();
  const waiting = waitingFor(useOutbox(), batch.id).filter((item) => item.refusal === null);
  const undoesWaiting = new Set(
    waiting.flatMap(({ message: { entry } }) => (entry.kind === 'reversal' ? [entry.entry] : [])),
  );
  const label = { count: t.count, loss: t.loss, look: t.look, stage: t.stageReached, move: t.move, ship: t.ship };
  const houseName = houses.find((house) => house.code === batch.house)?.name ?? batch.house;
  const mayRecord = useMay('record', batch.site);
  const mayAsk = useMay('set-up');
  return (
    <div className="rc-screen batch-page">
      <div className="rc-row rc-spread batch-head">
        <div>
          <p className="batch-name">{batch.varietyName}</p>
          <p className="rc-quiet">
            {site?.name ?? batch.site}.{' '}
            {t.stuckOn(format.dateTime(batch.stuckAt, timeZone), format.integer(batch.traysStuck), houseName)}
          </p>
        </div>
        <div className="rc-row rc-no-print" role="group" aria-label={t.actions}>
          {asOf === undefined && (
            <>
              {(mayRecord ? actionsFor(batch, houses) : []).map((each) => (
                <Button key={each} onClick={() => setAction(each)} {...(each === 'count' ? { theme: 'primary' } : {})}>
                  {label[each]}
                </Button>
              ))}
              {mayRecord && (
                <Link
                  className="rc-link"
                  to={`/floor?site=${encodeURIComponent(batch.site)}&batch=${encodeURIComponent(batch.id)}`}
                >
                  {t.onFloor}
                </Link>
              )}
              {mayAsk && (
                <Link className="rc-link" to={`/what-if?${new URLSearchParams({ site: batch.site, batch: batch.id })}`}>
                  {t.whatIf}
                </Link>
              )}
            </>
          )}
          <AsOfControl timeZone={timeZone} />
          <Button theme="tertiary" onClick={() => print()}>
            {t.print}
          </Button>
        </div>
      </div>
      <AsOfBanner timeZone={timeZone}>
        <Button className="rc-no-print" aria-pressed={since} onClick={() => setSince(!since)}>
          {since ? t.changedHide : t.changedSince}
        </Button>
      </AsOfBanner>
      {asOf !== undefined && since && <BatchSince then={batch} asOf={asOf} timeZone={timeZone} />}
      {staleSinceMs !== undefined && (
        <p className="rc-warning" role="status">
          ▲ {t.staleNote(format.time(new Date(staleSinceMs).toISOString()))}
        </p>
      )}
      {asOf === undefined && waiting.length > 0 && (
        <p className="rc-warning" role="status">
          ▲ {t.notYetIn(waiting.length)}
        </p>
      )}
      {asOf === undefined && <RefusedEntries batch={batch.id} timeZone={timeZone} />}
      <HeadFigures batch={batch} timeZone={timeZone} />
      <div className="batch-columns">
        <div>
          <StepsPicture batch={batch} />
          <OutlookPanel batch={batch} timeZone={timeZone} asOf={asOf} />
          <ReasonPanel batch={batch} timeZone={timeZone} asOf={asOf} />
          <DevelopmentPlots batch={batch} timeZone={timeZone} asOf={asOf} />
        </div>
        <div>
          <LossesTable batch={batch} />
          <StoryPart
            batch={batch}
            timeZone={timeZone}
            asOf={asOf}
            undo={asOf === undefined && mayRecord ? setUndoing : undefined}
            undoing={undoesWaiting}
          />
        </div>
      </div>
      {action && (
        <EntryDialog
          batch={batch}
          action={action}
          title={label[action]}
          timeZone={timeZone}
          close={() => setAction(undefined)}
        />
      )}
      {undoing && <UndoDialog undoing={undoing} close={() => setUndoing(undefined)} />}
    </div>
  );
}

function HeadFigures({ batch, timeZone }: { batch: BatchView; timeZone: string | undefined }) {
  const t = useMessages(storyMessages);
  const stages = useMessages(sharedMessages);
  const format = useFormats();
  const { plants, outlook, lastCount } = batch;
  const day = (instant: string | null) => (instant === null ? stages.notInSight : format.dayOf(instant, timeZone));
  const counted = () => {
    if (!lastCount) return t.neverCounted;
    const [n, when] = [format.integer(lastCount.alive), day(lastCount.at)];
    return lastCount.sampledCells === null
      ? t.lastCount(n, when)
      : t.lastSample(n, when, format.integer(lastCount.sampledCells));
  };
  return (
    <dl className="head-figures rc-sheet">
      <Figure name={t.alive} href="#story" note={counted()}>
        {format.integer(plants.alive)}
      </Figure>
      <Figure name={t.trays} href="#story" note={t.ofTrays(format.integer(batch.traysStuck), batch.trayFormat)}>
        {format.integer(batch.trays)}
      </Figure>
      <Figure
        name={t.lost}
        href="#losses"
        note={`${format.integer(plants.lost)} ${t.ofStuck(format.integer(plants.stuck))}`}
      >
        {format.percent(lostFraction(batch), 1, 1)}
      </Figure>
      {plants.shipped > 0 && (
        <Figure name={t.shipped} href="#story" note={t.plants}>
          {format.integer(plants.shipped)}
        </Figure>
      )}
      <Figure name={t.stage} href="#story" note={t.since(day(batch.stageSince))}>
        {stages[`stage${batch.stage}`]}
      </Figure>
      {outlook && (
        <>
          <Figure name={t.ready} href="#outlook" note={`${day(outlook.readyAt.p10)} – ${day(outlook.readyAt.p90)}`}>
            {day(outlook.readyAt.p50)}
          </Figure>
          <Figure
            name={t.saleable}
            href="#outlook"
            note={`${format.integer(outlook.saleableTrays.p10)} – ${format.integer(outlook.saleableTrays.p90)}`}
          >
            {format.integer(outlook.saleableTrays.p50)}
          </Figure>
        </>
      )}
    </dl>
  );
}

function Figure({ name, href, note, children }: { name: string; href: string; note: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <a href={href}>{children}</a>
        <small>{note}</small>
      </dd>
    </div>
  );
}

/** Whether the list of what changed since is shown: in the address, as on the board. */
function useSince(): [since: boolean, show: (since: boolean) => void] {
  const [params, setParams] = useSearchParams();
  const show = (since: boolean) =>
    setParams((before) => {
      const after = new URLSearchParams(before);
      if (since) after.set('since', 'yes');
      else after.delete('since');
      return after;
    });
  return [params.get('since') === 'yes', show];
}

/** Goes to the part of the page that the address names, once there is something to go to. */
function useOpenedAnchor(ready: boolean): void {
  const { hash, key } = useLocation();
  useEffect(() => {
    if (!ready || hash === '') return;
    const part = document.getElementById(decodeURIComponent(hash.slice(1)));
    part?.scrollIntoView({ block: 'start' });
    part?.focus({ preventScroll: true });
  }, [ready, hash, key]);
}
