import { lazy, Suspense, useId } from 'react';
import type { Instant } from './api-types';
import { Loading } from './screen-states';
import { useMessages } from './messages';
import { sharedMessages } from './shared-messages';
import { useFormats } from './formats';

/**
 * A plot over time: axes with units, uncertainty bands, a now-line, marks, and the figures as a table behind it.
 * The drawing library is fetched when the first plot is shown.
 */
export interface PlotProps {
  /** What the plot shows, for those who cannot see it and as the table's caption. */
  readonly label: string;
  readonly at: readonly Instant[];
  readonly series: readonly PlotSeries[];
  /** Shaded between two series, by their index. */
  readonly bands?: readonly { readonly low: number; readonly high: number }[];
  /** Name and unit of the upright axis: "Medium temperature, °C". */
  readonly yLabel: string;
  readonly yRange?: readonly [number, number];
  /** Replaces the numbers of the upright axis where it counts something with names. */
  readonly yTicks?: readonly { readonly at: number; readonly label: string }[];
  /** Upright lines with a word: a stage seen, a ready date. */
  readonly marks?: readonly { readonly at: Instant; readonly label: string }[];
  /** Level lines with a word: a set-point, a lower limit. */
  readonly levels?: readonly { readonly value: number; readonly label: string }[];
  readonly nowMs?: number;
  readonly timeZone?: string;
  readonly heightPx?: number;
  /** Keep every n-th instant in the table; 1 shows all. */
  readonly tableStep?: number;
}

export interface PlotSeries {
  readonly label: string;
  readonly values: readonly (number | null)[];
  readonly tone: 'ink' | 'quiet' | 'accent' | 'amber';
  readonly dashed?: boolean;
  /** Drawn only as the edge of a band. */
  readonly edgeOnly?: boolean;
  readonly digits?: number;
}

const PlotCanvas = lazy(() => import('./plot-canvas'));

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

function PlotTable({ label, at, series, tableStep = 1, timeZone }: PlotProps) {
  const t = useMessages(sharedMessages);
  const format = useFormats();
  return (
    <div style={{ maxHeight: '40vh', overflow: 'auto' }} tabIndex={0} role="region" aria-label={label}>
      <table className="rc-table">
        <thead>
          <tr>
            <th scope="col">{t.time}</th>
            {series.map((each) => (
              <th key={each.label} scope="col" className="rc-number">
                {each.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {at.map(
            (instant, i) =>
              i % tableStep === 0 && (
                <tr key={instant}>
                  <th scope="row">{format.dateTime(instant, timeZone)}</th>
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
