import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import './plot.css';
import { useEffect, useRef } from 'react';
import { useFormats, type Formats } from './formats';
import { useMessages } from './messages';
import type { PlotProps, PlotSeries } from './plot';
import { linesFor, restingPlace, timeTick } from './plot-labels';
import { usePreferences } from './preferences';
import { sharedMessages } from './shared-messages';

/** The drawing half of `Plot`; loaded apart because it brings the plotting library. */
export default function PlotCanvas(props: PlotProps) {
  const box = useRef<HTMLDivElement>(null);
  const format = useFormats();
  const { theme } = usePreferences();
  const { now, time } = useMessages(sharedMessages);

  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const draw = () =>
      new uPlot(optionsFor(props, element, format, { now: props.nowLabel ?? now, time }), dataOf(props), element);
    let plot = draw();
    const redraw = () => {
      plot.destroy();
      plot = draw();
    };
    const resized = new ResizeObserver(() => {
      if (element.clientWidth !== plot.width) plot.setSize({ width: element.clientWidth, height: plot.height });
    });
    resized.observe(element);
    // A canvas does not follow the colour scheme by itself.
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    scheme.addEventListener('change', redraw);
    return () => {
      resized.disconnect();
      scheme.removeEventListener('change', redraw);
      plot.destroy();
    };
  }, [props, format, theme, now, time]);

  return <div ref={box} role="img" aria-label={props.label} style={{ minHeight: props.heightPx ?? 240 }} />;
}

function dataOf({ at, over, series }: PlotProps): uPlot.AlignedData {
  return [
    at ? at.map((instant) => Date.parse(instant) / 1000) : [...over.values],
    ...series.map((each) => [...each.values]),
  ] as uPlot.AlignedData;
}

interface PlotWords {
  readonly now: string;
  readonly time: string;
}

function optionsFor(props: PlotProps, element: HTMLElement, format: Formats, words: PlotWords): uPlot.Options {
  const colour = coloursOf(element);
  const axis = {
    stroke: colour('ink-2'),
    grid: { stroke: colour('line'), width: 1 },
    ticks: { stroke: colour('line'), width: 1, size: 4 },
    font: `11px ${getComputedStyle(element).fontFamily}`,
  };
  const { over } = props;
  const overDigits = over?.digits ?? 0;
  return {
    width: element.clientWidth,
    height: props.heightPx ?? 240,
    ...(props.timeZone
      ? { tzDate: (seconds: number) => uPlot.tzDate(new Date(seconds * 1000), props.timeZone as string) }
      : {}),
    scales: {
      x: over ? { time: false, ...(over.range ? { range: [...over.range] as [number, number] } : {}) } : { time: true },
      y: props.yRange
        ? { range: [...props.yRange] as [number, number] }
        : props.yFromZero
          ? { range: (_plot, _min, max) => [0, (max || 1) * 1.1] as [number, number] }
          : {},
    },
    axes: [
      over
        ? {
            ...axis,
            label: over.label,
            labelFont: axis.font,
            labelSize: 16,
            size: 30,
            values: (_plot, values) => values.map((v) => format.decimal(v, Number.isInteger(v) ? 0 : overDigits)),
          }
        : { ...axis, values: (_plot, seconds) => seconds.map((s) => timeTick(s, seconds, format, props.timeZone)) },
      {
        ...axis,
        label: props.yLabel,
        labelFont: axis.font,
        labelSize: 18,
        size: props.yTicks ? 76 : 46,
        ...(props.yTicks
          ? {
              splits: () => props.yTicks?.map((tick) => tick.at) ?? [],
              values: () => props.yTicks?.map((tick) => tick.label) ?? [],
            }
          : {}),
      },
    ],
    series: [
      {
        label: over?.label ?? words.time,
        value: (_plot, x) => {
          if (x === null) return '–';
          return over
            ? format.decimal(x, overDigits)
            : format.dateTime(new Date(x * 1000).toISOString(), props.timeZone);
        },
      },
      ...props.series.map((each) => seriesFor(each, colour, format)),
    ],
    bands: (props.bands ?? []).map(({ low, high }) => ({ series: [high + 1, low + 1], fill: colour('accent', 0.16) })),
    legend: {
      show: true,
      live: true,
      markers: { dash: (_plot, i) => (props.series[i - 1]?.dashed ? 'dashed' : 'solid') },
    },
    cursor: { drag: { x: false, y: false } },
    hooks: {
      draw: [(plot) => drawLines(plot, props, colour, axis.font, words.now)],
      ready: [(plot) => tellAtRest(plot, props)],
      setCursor: [(plot) => (plot.cursor.idx === null || plot.cursor.idx === undefined) && tellAtRest(plot, props)],
    },
  };
}

/** Without a pointer the legend tells the latest figures, not dashes. */
function tellAtRest(plot: uPlot, props: PlotProps): void {
  const places = props.at ? props.at.map((at) => Date.parse(at)) : props.over.values;
  const idx = restingPlace(
    places,
    props.series.map(({ values }) => values),
    props.at ? props.nowMs : undefined,
  );
  if (idx !== undefined && plot.legend.idx !== idx) plot.setLegend({ idx }, false);
}

function seriesFor(each: PlotSeries, colour: Colours, format: Formats): uPlot.Series {
  const tone = { ink: 'ink', quiet: 'ink-2', accent: 'accent', amber: 'amber' }[each.tone];
  return {
    label: each.label,
    class: each.line === false ? (each.dots ? 'plot-dots' : 'plot-ends') : 'plot-line',
    stroke: colour(tone, each.edgeOnly ? 0.35 : 1),
    width: each.edgeOnly ? 1 : 1.6,
    ...(each.dashed ? { dash: [5, 4] } : {}),
    ...(each.line === false ? { paths: () => null } : {}),
    points: each.dots ? { show: true, size: 7, fill: colour(tone), stroke: colour(tone) } : { show: false },
    value: (_plot, value) => (value === null ? '–' : format.decimal(value, each.digits ?? 1)),
  };
}

/** Day names where ticks are days apart, hours where they are closer. */
function drawLines(plot: uPlot, props: PlotProps, colour: Colours, font: string, nowWord: string): void {
  const { ctx, bbox } = plot;
  const scale = devicePixelRatio;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  ctx.font = font.replace('11px', `${11 * scale}px`);
  ctx.lineWidth = scale;
  for (const { value, label } of props.levels ?? []) {
    const y = Math.round(plot.valToPos(value, 'y', true));
    ctx.strokeStyle = ctx.fillStyle = colour('ink-2');
    ctx.setLineDash([2 * scale, 3 * scale]);
    stroke(ctx, bbox.left, y, bbox.left + bbox.width, y);
    ctx.textAlign = 'left';
    ctx.fillText(label, bbox.left + 4 * scale, y - 3 * scale);
  }
  for (const { low, high } of props.whiskers ?? []) drawWhiskers(plot, low + 1, high + 1, colour('accent', 0.45));
  drawNotes(plot, props.notes ?? [], colour);
  drawUprights(plot, uprightsOf(props, nowWord), colour);
  ctx.restore();
}

interface Upright {
  readonly ms: number;
  readonly word: string;
  readonly tone: string;
  readonly dash: readonly number[];
}

/** Now first: its word is never the one left out. */
function uprightsOf({ nowMs, marks }: PlotProps, nowWord: string): readonly Upright[] {
  const now = nowMs === undefined ? [] : [{ ms: nowMs, word: nowWord, tone: 'accent', dash: [] }];
  const others = (marks ?? []).map(({ at, label }) => ({
    ms: Date.parse(at),
    word: label,
    tone: 'ink-2',
    dash: [4, 3],
  }));
  return [...now, ...others];
}

const LINES = 5;

function drawUprights(plot: uPlot, uprights: readonly Upright[], colour: Colours): void {
  const { ctx, bbox } = plot;
  const scale = devicePixelRatio;
  const end = bbox.left + bbox.width;
  const drawn = uprights.flatMap((upright) => {
    const x = Math.round(plot.valToPos(upright.ms / 1000, 'x', true));
    if (x < bbox.left || x > end) return [];
    const width = ctx.measureText(upright.word).width;
    const from = x + width + 6 * scale < end ? x + 4 * scale : x - 4 * scale - width;
    return [{ ...upright, x, from, until: from + width }];
  });
  const lines = linesFor(drawn, LINES);
  drawn.forEach(({ x, from, word, tone, dash }, i) => {
    ctx.strokeStyle = ctx.fillStyle = colour(tone);
    ctx.setLineDash(dash.map((each) => each * scale));
    stroke(ctx, x, bbox.top, x, bbox.top + bbox.height);
    const line = lines[i];
    ctx.textAlign = 'left';
    if (line !== undefined) ctx.fillText(word, from, bbox.top + (12 + 13 * line) * scale);
  });
}

type PlotNote = NonNullable<PlotProps['notes']>[number];

/** Below a ring, above it, and further off, px. */
const NOTE_PLACES = [15, -7, 28, -20];

function drawNotes(plot: uPlot, notes: readonly PlotNote[], colour: Colours): void {
  const scale = devicePixelRatio;
  // Notes of one height alone can lie on one another.
  for (const value of new Set(notes.map((note) => note.value))) {
    const level = notes.filter((note) => note.value === value);
    const places = linesFor(
      level.map(({ at, label }) => {
        const from = plot.valToPos(Date.parse(at) / 1000, 'x', true) + 7 * scale;
        return { from, until: from + plot.ctx.measureText(label).width };
      }),
      NOTE_PLACES.length,
    );
    level.forEach((note, i) => drawNote(plot, note, NOTE_PLACES[places[i] ?? -1], colour));
  }
}

function drawNote(plot: uPlot, note: PlotNote, wordPx: number | undefined, colour: Colours): void {
  const { ctx, bbox } = plot;
  const scale = devicePixelRatio;
  const x = plot.valToPos(Date.parse(note.at) / 1000, 'x', true);
  const y = plot.valToPos(note.value, 'y', true);
  if (x < bbox.left || x > bbox.left + bbox.width) return;
  ctx.setLineDash([]);
  ctx.lineWidth = 2 * scale;
  ctx.strokeStyle = ctx.fillStyle = colour('ink');
  ctx.beginPath();
  ctx.arc(x, y, 4.5 * scale, 0, 2 * Math.PI);
  ctx.stroke();
  if (note.filled) ctx.fill();
  ctx.textAlign = 'left';
  if (wordPx !== undefined) ctx.fillText(note.label, x + 7 * scale, y + wordPx * scale);
  ctx.lineWidth = scale;
}

function drawWhiskers(plot: uPlot, low: number, high: number, tone: string): void {
  const [xs = []] = plot.data;
  plot.ctx.strokeStyle = tone;
  plot.ctx.lineWidth = 2 * devicePixelRatio;
  plot.ctx.setLineDash([]);
  xs.forEach((at, i) => {
    const [from, to] = [plot.data[low]?.[i], plot.data[high]?.[i]];
    if (from === null || from === undefined || to === null || to === undefined) return;
    const x = Math.round(plot.valToPos(at, 'x', true));
    stroke(plot.ctx, x, plot.valToPos(from, 'y', true), x, plot.valToPos(to, 'y', true));
  });
}

function stroke(ctx: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  ctx.beginPath();
  ctx.moveTo(x1, y1);
  ctx.lineTo(x2, y2);
  ctx.stroke();
}

type Colours = (token: string, alpha?: number) => string;

/** Resolves the theme's tokens to what a canvas understands. */
function coloursOf(element: HTMLElement): Colours {
  const probe = document.createElement('span');
  element.append(probe);
  const found = new Map<string, string>();
  return (token, alpha = 1) => {
    let plain = found.get(token);
    if (plain === undefined) {
      probe.style.color = `var(--rc-${token})`;
      plain = getComputedStyle(probe).color;
      found.set(token, plain);
    }
    return alpha === 1 ? plain : plain.replace(/^rgb\((.*)\)$/, `rgba($1, ${alpha})`);
  };
}
