import { useMemo } from 'react';
import type { House } from '../shared/api-types';
import type { ClimateSeries, PhaseRecipe } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { Part } from '../shared/part';
import { Plot } from '../shared/plot';
import { useSeries } from './climate-api';
import { climateMessages } from './climate-messages';
import { bandAt, isNight, linesOf, periodUntil } from './climate-state';
import { useQuantityWords } from './climate-words';

interface HourPlotProps {
  readonly series: ClimateSeries;
  readonly phases: readonly PhaseRecipe[];
  readonly house: House;
  readonly timeZone: string | undefined;
  readonly nowMs: number;
}

/** More doubtful readings than this would hide the line they are about. */
const MOST_MARKS = 12;

/** One quantity of a house, hour by hour, over the band that suits every batch in it. */
export function HourPlot({ series, phases, house, timeZone, nowMs }: HourPlotProps) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const { quantity, hours, flags } = series;
  const filledHours = hours.filter(({ source }) => source === 'filled').length;
  const plot = useMemo(() => {
    const lines = linesOf(hours, (value) => words.shown(quantity, value));
    const bands = hours.map(({ at }) => bandAt(phases, quantity, isNight(timeZone, Date.parse(at))));
    const end = (pick: 'least' | 'most') =>
      bands.map((band) => {
        const value = band && !band.clash ? band[pick] : null;
        return value === null || value === undefined ? null : words.shown(quantity, value);
      });
    const [least, most] = [end('least'), end('most')];
    const both = least.some((value) => value !== null) && most.some((value) => value !== null);
    const digits = words.digits(quantity);
    return (
      <Plot
        label={t.plotSummary(t[quantity], house.name)}
        at={hours.map(({ at }) => at)}
        series={[
          { label: t.measured, values: lines.measured, tone: 'ink', digits },
          { label: t.filled, values: lines.filled, tone: 'amber', dashed: true, digits },
          ...(least.some((value) => value !== null)
            ? [{ label: t.bandLow, values: least, tone: 'accent', edgeOnly: true, digits } as const]
            : []),
          ...(most.some((value) => value !== null)
            ? [{ label: t.bandHigh, values: most, tone: 'accent', edgeOnly: true, digits } as const]
            : []),
        ]}
        bands={both ? [{ low: 2, high: 3 }] : []}
        marks={(flags ?? [])
          .filter(({ kind }) => kind !== 'late' && kind !== 'duplicate')
          .slice(0, MOST_MARKS)
          .map(({ at, kind }) => ({ at, label: t[kind] }))}
        yLabel={words.unit(quantity)}
        {...(quantity === 'medium-moisture' ? { yRange: [0.5, 5.5] as const } : {})}
        nowMs={nowMs}
        timeZone={timeZone}
        heightPx={210}
      />
    );
  }, [t, words, quantity, hours, flags, phases, house.name, timeZone, nowMs]);
  return (
    <Part
      title={t[quantity]}
      aside={filledHours > 0 && <small className="rc-at-risk">▲ {t.filledHours(format.integer(filledHours))}</small>}
      first={quantity === 'medium-temperature'}
    >
      {plot}
    </Part>
  );
}

interface DailyLightProps {
  readonly house: string;
  readonly days: number;
  readonly nowMs: number;
  readonly timeZone: string | undefined;
}

/** At least a week, so that a day can be told from its neighbours. */
const LEAST_DAYS = 7;

/** The light of each ended day. */
export function DailyLight({ house, days, nowMs, timeZone }: DailyLightProps) {
  const t = useMessages(climateMessages);
  const words = useQuantityWords();
  const light = useSeries(house, 'daily-light-integral', periodUntil(nowMs, Math.max(days, LEAST_DAYS)));
  const hours = light.data?.hours;
  const plot = useMemo(
    () =>
      hours &&
      hours.length > 0 && (
        <Plot
          label={t.dliLabel}
          at={hours.map(({ at }) => at)}
          series={[{ label: t.measured, values: hours.map(({ value }) => value), tone: 'ink', dots: true }]}
          yLabel={words.unit('daily-light-integral')}
          yFromZero
          timeZone={timeZone}
          heightPx={210}
        />
      ),
    [t, words, hours, timeZone],
  );
  if (!plot) return null;
  return <Part title={t['daily-light-integral']}>{plot}</Part>;
}
