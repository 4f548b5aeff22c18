import { useState } from 'react';
import { Link } from 'react-router';
import type { BatchView } from '../shared/api-types';
import { useOutbox } from '../outbox/outbox';
import { laneOf, waitingFor } from '../outbox/outbox-state';
import { useBatch } from '../shared/batch-queries';
import { ClosedHouseNote } from '../shared/closed-houses';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { Failed, Loading } from '../shared/screen-states';
import { useHouses, useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { EntryPanel } from './entry-panel';
import { entryMessages } from './entry-messages';
import { echoWords } from './entry-words';
import { floorMessages } from './floor-messages';
import { actionsFor, isFinished, type Action } from './floor-state';
import { HappenedChoice, type Happened } from './happened-choice';
import { LastEntries } from './last-entries';
import { UndoPanel, type Undoing } from './undo-panel';
import { RefusedEntries } from './refused-entries';

interface FloorBatchProps {
  readonly id: string;
  readonly action: Action | undefined;
  readonly mends: string | undefined;
  readonly choose: (action: Action | undefined) => void;
  readonly leave: () => void;
}

/** One batch on the floor: its figures, what can be recorded, and what was recorded last. */
export function FloorBatch({ id, action, mends, choose, leave }: FloorBatchProps) {
  const t = useMessages(floorMessages);
  const words = useMessages(entryMessages);
  const batch = useBatch(id);
  const houses = useHouses().data ?? [];
  const timeZone = useSites().data?.find((site) => site.code === batch.data?.site)?.timeZone;
  const [undoing, setUndoing] = useState<Undoing>();
  const [said, setSaid] = useState('');
  const [happened, setHappened] = useState<Happened>();
  const format = useFormats();
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;

  if (batch.isPending) return <Loading />;
  if (!batch.data) {
    const unknown = batch.error instanceof Problem && batch.error.status === 404;
    return (
      <>
        {unknown ? (
          <p role="alert">{t.unknownBatch(id)}</p>
        ) : (
          <Failed failure={batch.error} retry={() => void batch.refetch()} />
        )}
        <button type="button" className="floor-button" onClick={leave}>
          {t.otherBatch}
        </button>
      </>
    );
  }
  const label = { count: t.count, loss: t.loss, look: t.look, stage: t.stageReached, move: t.move, ship: t.ship };
  if (action || undoing) {
    const back = () => {
      setUndoing(undefined);
      setHappened(undefined);
      choose(undefined);
    };
    return (
      <section className="floor-panel">
        <div className="panel-head">
          <button type="button" className="floor-button" onClick={back}>
            ← {t.back}
          </button>
          <h2>
            {undoing ? words.undo : action && label[action]}
            <small>
              {batch.data.id}, {batch.data.varietyName}
            </small>
          </h2>
        </div>
        {undoing ? (
          <UndoPanel
            undoing={undoing}
            done={(outcome) => {
              setSaid(outcome === 'removed' ? t.removed : outcome === 'sent' ? t.undoSent : '');
              back();
            }}
          />
        ) : (
          action && (
            <>
              <EntryPanel
                batch={batch.data}
                action={action}
                mends={mends}
                happened={happened}
                done={(entry) => {
                  setSaid(echoWords(entry, batch.data.plants.alive, { t: words, format, houseName }));
                  back();
                }}
              />
              {mends === undefined && <HappenedChoice timeZone={timeZone} onHappened={setHappened} />}
            </>
          )
        )}
      </section>
    );
  }
  const actions = actionsFor(batch.data, houses);
  return (
    <>
      <div className="panel-head">
        <button type="button" className="floor-button" onClick={leave}>
          ← {t.otherBatch}
        </button>
        <Link className="floor-button" to={`/batches/${encodeURIComponent(id)}`}>
          {t.story}
        </Link>
      </div>
      <div className="floor-batch">
        <div>
          <ClosedHouseNote house={batch.data.house} />
          <Figures
            batch={batch.data}
            timeZone={timeZone}
            stale={batch.isError}
            asOfMs={batch.dataUpdatedAt}
            said={said}
          />
          <RefusedEntries batch={id} timeZone={timeZone} />
          {isFinished(batch.data) && <p className="rc-quiet">{t.finished}</p>}
          <div className="actions">
            {actions.map((each) => (
              <button
                key={each}
                type="button"
                className={`floor-button ${each === 'count' ? 'primary' : ''}`}
                onClick={() => choose(each)}
              >
                {label[each]}
              </button>
            ))}
          </div>
        </div>
        <LastEntries batch={batch.data} timeZone={timeZone} undo={setUndoing} />
      </div>
    </>
  );
}

function Figures(props: {
  batch: BatchView;
  timeZone: string | undefined;
  stale: boolean;
  asOfMs: number;
  said: string;
}) {
  const { batch, timeZone, stale, asOfMs, said } = props;
  const t = useMessages(floorMessages);
  const stages = useMessages(sharedMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const view = useOutbox();
  const waiting = waitingFor(view, batch.id).filter((item) => item.refusal === null).length;
  const lastSentMs = view.sent.find(({ message }) => laneOf(message) === batch.id)?.sentAtMs ?? 0;
  // Between the acknowledgement and the new figures the old ones are known to be wrong.
  const outdated = lastSentMs > asOfMs;
  const { lastCount } = batch;
  const counted =
    lastCount &&
    (lastCount.sampledCells === null ? t.counted : t.countedSample)(
      format.integer(lastCount.alive),
      format.dayOf(lastCount.at, timeZone),
    );
  const isRefused = view.waiting.some((item) => item.refusal !== null && laneOf(item.message) === batch.id);
  const echo = isRefused ? '' : said;
  const note = () => {
    if (stale) return `▲ ${t.old(format.time(new Date(asOfMs).toISOString(), timeZone))}`;
    if (waiting > 0) return `▲ ${[echo, t.notInFigures(waiting)].filter(Boolean).join(' · ')}`;
    return [echo, outdated ? t.renewing : ''].filter(Boolean).join(' · ');
  };
  return (
    <section className={`figures ${outdated || waiting > 0 || stale ? 'outdated' : ''}`} aria-label={batch.varietyName}>
      <h2>
        {batch.varietyName}
        <small>{batch.id}</small>
      </h2>
      <dl>
        <div className="figure-main">
          <dt>{t.alive}</dt>
          <dd>{format.integer(batch.plants.alive)}</dd>
        </div>
        <div>
          <dt>{t.trays}</dt>
          <dd>
            {format.integer(batch.trays)} <small>× {batch.trayFormat}</small>
          </dd>
        </div>
        <div>
          <dt>{t.stage}</dt>
          <dd>{stages[`stage${batch.stage}`]}</dd>
        </div>
        <div>
          <dt>{t.house}</dt>
          <dd>{houses.find((house) => house.code === batch.house)?.name ?? batch.house}</dd>
        </div>
        <div>
          <dt>{t.lastCount}</dt>
          <dd>{counted ?? t.neverCounted}</dd>
        </div>
      </dl>
      <p className="figures-note" role="status">
        {note()}
      </p>
    </section>
  );
}
