import { useMemo } from 'react';
import type { BatchView, Development } from '../shared/api-types';
import { useDevelopment } from '../shared/batch-queries';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { Plot } from '../shared/plot';
import { usePreferences } from '../shared/preferences';
import { Failed, Loading } from '../shared/screen-states';
import { temperatureShown } from '../shared/units';
import { Part } from '../shared/part';
import { entryMessages } from '../floor/entry-messages';
import { linesBySource, lookNotes, progressLines } from './development-state';
import { reasonMessages } from './reason-messages';
import { storyMessages } from './story-messages';

/** The medium temperature a batch has had and is expected to have, and what it makes of it. */
export function DevelopmentPlots({
  batch,
  timeZone,
  asOf,
}: {
  batch: BatchView;
  timeZone: string | undefined;
  asOf: string | undefined;
}) {
  const t = useMessages(storyMessages);
  const development = useDevelopment(batch.id, asOf);
  const nowMs = useNow();
  const format = useFormats();
  const then = asOf === undefined ? nowMs : Date.parse(asOf);
  const thenLabel = asOf === undefined ? undefined : format.dayOf(asOf, timeZone);
  if (development.isPending) return <Loading />;
  if (!development.data) return <Failed failure={development.error} retry={() => void development.refetch()} />;
  const { hours, progress } = development.data;
  if (hours.length === 0 && progress.length === 0) return <p className="rc-quiet">{t.noDevelopment}</p>;
  return (
    <>
      {progress.length > 0 && (
        <ProgressPlot development={development.data} timeZone={timeZone} nowMs={then} nowLabel={thenLabel} />
      )}
      {hours.length > 0 && (
        <TemperaturePlot development={development.data} timeZone={timeZone} nowMs={then} nowLabel={thenLabel} />
      )}
    </>
  );
}

interface PlotOf {
  readonly development: Development;
  readonly timeZone: string | undefined;
  readonly nowMs: number;
  readonly nowLabel: string | undefined;
}

function ProgressPlot({ development, timeZone, nowMs, nowLabel }: PlotOf) {
  const t = useMessages(storyMessages);
  const words = useMessages(entryMessages);
  const reason = useMessages(reasonMessages);
  const { batch, progress, plan, looks, stages } = development;
  // A plot is drawn anew whenever its element changes, so the element is kept while its data stay.
  const plot = useMemo(() => {
    const lines = progressLines({ progress, plan });
    return (
      <Plot
        label={t.progressSummary(batch)}
        at={lines.at}
        series={[
          { label: t.p10, values: lines.p10, tone: 'accent', edgeOnly: true, digits: 2 },
          { label: t.p50, values: lines.p50, tone: 'accent', digits: 2 },
          { label: t.p90, values: lines.p90, tone: 'accent', edgeOnly: true, digits: 2 },
          ...(lines.plan
            ? [{ label: reason.plan, values: lines.plan, tone: 'quiet', dashed: true, digits: 2 } as const]
            : []),
        ]}
        bands={[{ low: 0, high: 2 }]}
        yLabel={t.progressLabel}
        yRange={[0, 3.2]}
        yTicks={[t.stuckTick, t.callusedTick, t.rootedTick, t.readyTick].map((label, at) => ({ at, label }))}
        marks={stages.map(({ stage, reachedAt }) => ({ at: reachedAt, label: words[`reached${stage}`] }))}
        notes={lookNotes(looks ?? [], reason.lookSaid)}
        nowMs={nowMs}
        nowLabel={nowLabel}
        timeZone={timeZone}
        heightPx={250}
      />
    );
  }, [t, words, reason, batch, progress, plan, looks, stages, nowMs, nowLabel, timeZone]);
  return (
    <Part title={t.progress} className="story-plot">
      {plot}
      <p className="rc-quiet rc-small">{reason.legend}</p>
    </Part>
  );
}

function TemperaturePlot({ development, timeZone, nowMs, nowLabel }: PlotOf) {
  const t = useMessages(storyMessages);
  const format = useFormats();
  const { temperature } = usePreferences();
  const { batch, hours, stages } = development;
  const words = useMessages(entryMessages);
  const plot = useMemo(() => {
    const lines = linesBySource(hours, (celsius) => temperatureShown(celsius, temperature));
    return (
      <Plot
        label={t.temperatureSummary(batch)}
        at={hours.map(({ at }) => at)}
        series={[
          { label: t.measured, values: lines.measured, tone: 'ink' },
          { label: t.filled, values: lines.filled, tone: 'amber', dashed: true },
          { label: t.forecast, values: lines.forecast, tone: 'quiet', dashed: true },
        ]}
        yLabel={t.temperatureLabel(format.temperatureUnit)}
        marks={stages.map(({ stage, reachedAt }) => ({ at: reachedAt, label: words[`reached${stage}`] }))}
        nowMs={nowMs}
        nowLabel={nowLabel}
        timeZone={timeZone}
        heightPx={250}
        tableStep={3}
      />
    );
  }, [t, words, batch, hours, stages, temperature, format.temperatureUnit, nowMs, nowLabel, timeZone]);
  return (
    <Part id="readings" title={t.temperature} className="story-plot">
      {plot}
      <p className="rc-quiet rc-small">{t.temperatureLegend}</p>
    </Part>
  );
}
