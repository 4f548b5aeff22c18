import type { ReactNode } from 'react';
import { Link, useSearchParams } from 'react-router';
import { useFormats } from '../shared/formats';
import type { TrackRecord } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useCrops } from '../shared/setup-lists';
import { CropRecords } from './crop-records';
import { useTrackRecord } from './track-record-api';
import { trackRecordMessages } from './track-record-messages';
import { TrackRecordPlots } from './track-record-plots';
import { TrustRoom } from './trust-room';
import { comparisonOf, filterFrom, isEmpty, leadsWith, leanOf, paramsFor } from './track-record-state';
import './track-record.css';

/** Were yesterday's predictions any good? The score over all finished batches, beside two simple ways of counting. */
export function TrackRecordView() {
  const t = useMessages(trackRecordMessages);
  useScreenTitle(t.title);
  const format = useFormats();
  const [params, setParams] = useSearchParams();
  const filter = filterFrom(params);
  const change = (part: Partial<typeof filter>) =>
    setParams((before) => paramsFor({ ...filterFrom(before), ...part }, before));
  const crops = useCrops().data ?? [];
  const record = useTrackRecord(filter);
  const body = () => {
    if (record.isPending) return <Loading />;
    if (!record.data) return <Failed failure={record.error} retry={() => void record.refetch()} />;
    if (isEmpty(record.data)) {
      return (
        <Empty title={t.none}>
          <p>{filter.crop === undefined ? t.noneHelp : t.noneOfCrop}</p>
          <Link className="rc-link" to="/batches">
            {t.toBatches}
          </Link>
        </Empty>
      );
    }
    return <Score record={record.data} pick={(crop) => change({ crop })} />;
  };
  return (
    <div className="rc-screen record">
      <form
        className="record-filters rc-no-print"
        role="search"
        aria-label={t.filters}
        onSubmit={(event) => event.preventDefault()}
      >
        <label>
          <span>{t.lead}</span>
          <select
            value={filter.leadDays}
            onChange={(event) => change({ leadDays: Number(event.target.value) })}
            className="rc-select"
          >
            {leadsWith(filter.leadDays).map((lead) => (
              <option key={lead} value={lead}>
                {t.days(lead)}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{t.crop}</span>
          <select
            value={filter.crop ?? ''}
            onChange={(event) => change({ crop: event.target.value || undefined })}
            className="rc-select"
          >
            <option value="">{t.allCrops}</option>
            {filter.crop !== undefined && !crops.some(({ code }) => code === filter.crop) && (
              <option>{filter.crop}</option>
            )}
            {crops.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </form>
      {record.isError && record.data && (
        <p className="rc-warning" role="status">
          ▲ {t.stale(format.time(new Date(record.dataUpdatedAt).toISOString()))}
        </p>
      )}
      <div className={record.isPlaceholderData ? 'record-old' : undefined}>{body()}</div>
    </div>
  );
}

function Score({ record, pick }: { record: TrackRecord; pick: (crop: string) => void }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  return (
    <>
      <Headline record={record} />
      <Figures record={record} />
      <TrustRoom record={record} />
      <TrackRecordPlots record={record} />
      <CropRecords record={record} pick={pick} />
      <p className="rc-quiet">{t.method}</p>
      {record.pinball !== null && record.crps !== null && (
        <details className="rc-quiet">
          <summary>{t.stricter}</summary>
          <p>{t.lossHelp(format.decimal(record.pinball, 2), format.decimal(record.crps, 2))}</p>
        </details>
      )}
    </>
  );
}

/** The score in plain sentences, before any figure. */
function Headline({ record }: { record: TrackRecord }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  const days = (value: number) => format.decimal(Math.abs(value), 1);
  const { maeDays, biasDays, coverage, promisedKept, promisedCases, leadDays } = record;
  const held = coverage['0.8'];
  const lean = biasDays === null ? undefined : leanOf(biasDays);
  return (
    <div className="record-said">
      {maeDays !== null && (
        <p className="record-main">
          {leadDays === 1 ? t.offOne(days(maeDays)) : t.off(t.days(leadDays), days(maeDays))}{' '}
          {typeof held === 'number' && t.held(format.percent(0.8), format.percent(held))}
        </p>
      )}
      <p>
        {lean !== undefined && (lean === 'level' ? t.level : t[lean](days(biasDays ?? 0)))}{' '}
        {promisedKept === null ? t.noPromises : t.kept(format.percent(promisedKept), format.integer(promisedCases))}{' '}
        <span className="rc-quiet">
          {t.over(format.integer(record.n))}, {t.asOf(format.dateTime(record.asOf))}
        </span>
      </p>
    </div>
  );
}

function Figures({ record }: { record: TrackRecord }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  const days = (value: number) => format.decimal(Math.abs(value), 1);
  const share = (value: number) => format.percent(value);
  const compared = (skill: number | null) => {
    if (skill === null) return '–';
    const comparison = comparisonOf(skill);
    return comparison.kind === 'same' ? t.same : t[comparison.kind](share(comparison.share));
  };
  const { calendar, degreeDays } = record.baselines;
  const { biasDays, maeDays, promisedKept } = record;
  const held = record.coverage['0.8'];
  const lean = () => {
    if (biasDays === null) return '–';
    const way = leanOf(biasDays);
    return { later: t.leanLater(days(biasDays)), earlier: t.leanEarlier(days(biasDays)), level: t.leanLevel }[way];
  };
  return (
    <dl className="record-figures rc-sheet" aria-label={t.figures}>
      <Figure name={t.meanError} value={maeDays === null ? '–' : t.meanErrorOf(days(maeDays))} note={lean()} />
      <Figure name={t.ranges} value={typeof held === 'number' ? share(held) : '–'} note={t.rangesStated} />
      <Figure
        name={t.promises}
        value={promisedKept === null ? '–' : share(promisedKept)}
        note={promisedKept === null ? t.noPromises : t.promisesThere(format.integer(record.promisedCases))}
      />
      <Figure
        name={t.calendar}
        value={calendar.maeDays === null ? '–' : t.meanErrorOf(days(calendar.maeDays))}
        note={compared(calendar.skill)}
      />
      <Figure
        name={t.degreeDays}
        value={degreeDays.maeDays === null ? '–' : t.meanErrorOf(days(degreeDays.maeDays))}
        note={compared(degreeDays.skill)}
      />
    </dl>
  );
}

function Figure({ name, value, note }: { name: string; value: ReactNode; note: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <b>{value}</b>
        <small>{note}</small>
      </dd>
    </div>
  );
}
