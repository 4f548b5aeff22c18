import { lazy, Suspense, useId } from 'react';
import type { Instant } from './api-types';
import { Loading } from './screen-states';
import { useMessages } from './messages';
import { sharedMessages } from './shared-messages';
import { useFormats } from './formats';

/**
 * A plot over time or over a number: axes with units, uncertainty bands, a now-line, marks, and the figures as a table
 * behind it. The drawing library is fetched when the first plot is shown.
 */
export type PlotProps = PlotOverTime | PlotOverNumber;

export interface PlotOverTime extends PlotLook {
  readonly at: readonly Instant[];
  readonly over?: undefined;
}

/** The level axis counts something: days of lead, a stated share. */
export interface PlotOverNumber extends PlotLook {
  readonly at?: undefined;
  readonly over: {
    /** Name and unit: "Days before ready". */
    readonly label: string;
    /** In rising order. */
    readonly values: readonly number[];
    readonly digits?: number;
    readonly range?: readonly [number, number];
  };
}

interface PlotLook {
  /** What the plot shows, for those who cannot see it and as the table's caption. */
  readonly label: string;
  readonly series: readonly PlotSeries[];
  /** Shaded between two series, by their index. */
  readonly bands?: readonly { readonly low: number; readonly high: number }[];
  /** An upright stroke at each place between two series, by their index. */
  readonly whiskers?: readonly { readonly low: number; readonly high: number }[];
  /** Name and unit of the upright axis: "Medium temperature, °C". */
  readonly yLabel: string;
  readonly yRange?: readonly [number, number];
  /** The upright axis begins at 0 and ends above the largest value. */
  readonly yFromZero?: boolean;
  /** Replaces the numbers of the upright axis where it counts something with names. */
  readonly yTicks?: readonly { readonly at: number; readonly label: string }[];
  /** Upright lines with a word: a stage seen, a ready date. */
  readonly marks?: readonly { readonly at: Instant; readonly label: string }[];
  /** Rings at a time and height with a word: an observation. */
  readonly notes?: readonly {
    readonly at: Instant;
    readonly value: number;
    readonly label: string;
    readonly filled: boolean;
  }[];
  /** Level lines with a word: a set-point, a lower limit. */
  readonly levels?: readonly { readonly value: number; readonly label: string }[];
  readonly nowMs?: number;
  /** What stands at `nowMs` where that is not now. */
  readonly nowLabel?: string | undefined;
  readonly timeZone?: string;
  readonly heightPx?: number;
  /** Keep every n-th instant in the table; 1 shows all. */
  readonly tableStep?: number;
  /** What each place on the level axis is: a batch's number. Said in the table. */
  readonly rowNames?: { readonly label: string; readonly names: readonly string[] };
}

export interface PlotSeries {
  readonly label: string;
  readonly values: readonly (number | null)[];
  readonly tone: 'ink' | 'quiet' | 'accent' | 'amber';
  readonly dashed?: boolean;
  /** Drawn only as the edge of a band. */
  readonly edgeOnly?: boolean;
  /** Drawn as a mark at each value; with `line: false` as marks alone. */
  readonly dots?: boolean;
  readonly line?: boolean;
  readonly digits?: number;
}

// Without a connection the figures are still in the table: the screen must not break for its drawing.
const PlotCanvas = lazy(() => import('./plot-canvas').catch(() => ({ default: PlotNotFetched })));

function PlotNotFetched() {
  const t = useMessages(sharedMessages);
  return <p className="rc-quiet">{t.plotNotFetched}</p>;
}

export function Plot(props: PlotProps) {
  const t = useMessages(sharedMessages);
  const caption = useId();
  return (
    <figure className="plot" style={{ margin: 0 }} aria-labelledby={caption}>
      <figcaption id={caption} className="rc-hidden">
        {props.label}
      </figcaption>
      <Suspense fallback={<Loading />}>
        <PlotCanvas {...props} />
      </Suspense>
      <details className="rc-no-print">
        <summary>{t.dataTable}</summary>
        <PlotTable {...props} />
      </details>
    </figure>
  );
}

function PlotTable({ label, at, over, series, tableStep = 1, timeZone, rowNames }: PlotProps) {
  const t = useMessages(sharedMessages);
  const format = useFormats();
  const places = at
    ? at.map((instant) => format.dateTime(instant, timeZone))
    : over.values.map((value) => format.decimal(value, over.digits ?? 0));
  return (
    <div style={{ maxHeight: '40vh', overflow: 'auto' }} tabIndex={0} role="region" aria-label={label}>
      <table className="rc-table">
        <thead>
          <tr>
            {rowNames && <th scope="col">{rowNames.label}</th>}
            <th scope="col">{over ? over.label : t.time}</th>
            {series.map((each) => (
              <th key={each.label} scope="col" className="rc-number">
                {each.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {places.map(
            (place, i) =>
              i % tableStep === 0 && (
                <tr key={i}>
                  {rowNames && <th scope="row">{rowNames.names[i]}</th>}
                  {rowNames ? <td>{place}</td> : <th scope="row">{place}</th>}
                  {series.map((each) => {
                    const value = each.values[i];
                    return (
                      <td key={each.label} className="rc-number">
                        {value === null || value === undefined ? '–' : format.decimal(value, each.digits ?? 1)}
                      </td>
                    );
                  })}
                </tr>
              ),
          )}
        </tbody>
      </table>
    </div>
  );
}
