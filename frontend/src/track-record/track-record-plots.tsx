import { useMemo } from 'react';
import type { TrackRecord } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { Plot } from '../shared/plot';
import { sharedMessages } from '../shared/shared-messages';
import { trackRecordMessages } from './track-record-messages';
import { byRisingLead, coveragePoints, missesOf } from './track-record-state';

/** Error by lead, stated against held, and every prediction against what came. */
export function TrackRecordPlots({ record }: { record: TrackRecord }) {
  return (
    <div className="record-plots">
      <LeadPlot record={record} />
      <CoveragePlot record={record} />
      <MissPlot record={record} />
    </div>
  );
}

function LeadPlot({ record: { byLead } }: { record: TrackRecord }) {
  const t = useMessages(trackRecordMessages);
  // A plot is drawn anew whenever its element changes, so the element is kept while its data stay.
  const plot = useMemo(() => {
    const leads = byRisingLead(byLead);
    return (
      <Plot
        label={t.byLeadSummary}
        over={{ label: t.leadAxis, values: leads.map(({ leadDays }) => leadDays) }}
        series={[
          { label: t.ours, values: leads.map(({ maeDays }) => maeDays), tone: 'accent', dots: true, digits: 2 },
          {
            label: t.calendar,
            values: leads.map(({ calendarMaeDays }) => calendarMaeDays),
            tone: 'quiet',
            dashed: true,
            dots: true,
            digits: 2,
          },
          {
            label: t.degreeDays,
            values: leads.map(({ degreeDaysMaeDays }) => degreeDaysMaeDays),
            tone: 'ink',
            dashed: true,
            dots: true,
            digits: 2,
          },
        ]}
        yLabel={t.errorAxis}
        yFromZero
        heightPx={250}
      />
    );
  }, [t, byLead]);
  return (
    <section aria-label={t.byLead}>
      <h2>{t.byLead}</h2>
      {plot}
      <p className="rc-quiet rc-small">{t.byLeadHelp}</p>
    </section>
  );
}

function CoveragePlot({ record: { coverage } }: { record: TrackRecord }) {
  const t = useMessages(trackRecordMessages);
  const plot = useMemo(() => {
    const points = coveragePoints(coverage);
    return (
      <Plot
        label={t.coverageSummary}
        over={{ label: t.statedAxis, values: points.map(({ stated }) => stated * 100), range: [40, 100] }}
        series={[
          { label: t.heldSeries, values: points.map(({ held }) => held * 100), tone: 'accent', dots: true },
          { label: t.rightSeries, values: points.map(({ stated }) => stated * 100), tone: 'quiet', dashed: true },
        ]}
        yLabel={t.heldAxis}
        yRange={[Math.min(40, ...points.map(({ held }) => held * 100 - 5)), 102]}
        heightPx={250}
      />
    );
  }, [t, coverage]);
  return (
    <section aria-label={t.coverage}>
      <h2>{t.coverage}</h2>
      {plot}
      <p className="rc-quiet rc-small">{t.coverageHelp}</p>
    </section>
  );
}

function MissPlot({ record: { batches } }: { record: TrackRecord }) {
  const t = useMessages(trackRecordMessages);
  const shared = useMessages(sharedMessages);
  const plot = useMemo(() => {
    const misses = missesOf(batches);
    return (
      <Plot
        label={t.predictedSummary}
        at={misses.map(({ readyAt }) => readyAt)}
        series={[
          { label: t.early, values: misses.map(({ p10 }) => p10), tone: 'quiet', line: false },
          { label: t.even, values: misses.map(({ p50 }) => p50), tone: 'accent', dots: true, line: false },
          { label: t.late, values: misses.map(({ p90 }) => p90), tone: 'quiet', line: false },
        ]}
        whiskers={[{ low: 0, high: 2 }]}
        levels={[{ value: 0, label: t.right }]}
        yLabel={t.missAxis}
        rowNames={{ label: shared.batchWord, names: misses.map(({ batch }) => batch) }}
        heightPx={280}
      />
    );
  }, [t, shared, batches]);
  return (
    <section aria-label={t.predicted} className="record-wide">
      <h2>{t.predicted}</h2>
      {plot}
      <p className="rc-quiet rc-small">{t.predictedHelp}</p>
    </section>
  );
}
