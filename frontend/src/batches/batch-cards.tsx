import { useRef } from 'react';
import { Link } from 'react-router';
import type { BatchView } from '../shared/api-types';
import { useWindowedRows } from '../shared/windowed-rows';
import { VarietyName } from '../shared/variety-name-view';
import { cellText, type CellWords } from './batch-cells';
import type { Column } from './batches-state';

/** With room for the longest names: a card beside another is narrower, so its lines break sooner. */
const CARD_PX = 158;
const NARROW_CARD_PX = 178;

/** The list without room for its table: one card per batch, drawn only while in sight. */
export function BatchCards({
  batches,
  words,
  label,
  columns,
}: {
  batches: readonly BatchView[];
  words: CellWords;
  label: string;
  /** How many cards stand beside each other. */
  columns: number;
}) {
  const scroller = useRef<HTMLDivElement>(null);
  const cardPx = columns > 1 ? NARROW_CARD_PX : CARD_PX;
  const rows = Math.ceil(batches.length / columns);
  const seen = useWindowedRows(scroller, rows, cardPx);
  const fromInclusive = seen.fromInclusive * columns;
  return (
    <div ref={scroller} className="batch-cards" role="region" aria-label={label} tabIndex={0}>
      <ul
        style={{
          height: rows * cardPx,
          paddingTop: seen.fromInclusive * cardPx,
          gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))`,
        }}
      >
        {batches.slice(fromInclusive, seen.untilExclusive * columns).map((batch, i) => (
          <li
            key={batch.id}
            aria-setsize={batches.length}
            aria-posinset={fromInclusive + i + 1}
            style={{ height: cardPx }}
          >
            <Card batch={batch} words={words} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function Card({ batch, words }: { batch: BatchView; words: CellWords }) {
  const { t } = words;
  const settled = cellText(batch, 'ready', words).range === undefined;
  const figure = (column: Column, name: string) => {
    const { main, range } = cellText(batch, column, words);
    return (
      <span className="card-figure">
        <b>{main}</b> {name}
        {range !== undefined && column !== 'trays' && <small>{range}</small>}
      </span>
    );
  };
  return (
    <Link className="rc-sheet batch-card" to={`/batches/${encodeURIComponent(batch.id)}`}>
      <VarietyName name={batch.varietyName} className="card-name" />
      <span className="rc-quiet card-where">
        {batch.id}, {words.names.house(batch.house)}, {words.stage(batch)}
      </span>
      <span className="card-figures">
        {figure('alive', t.alive)}
        {figure('lost', t.lost)}
        {figure('ready', t.ready)}
        {figure('saleable', t.saleable)}
        {/* Where no range takes the room, what else one asks of a batch that can go. */}
        {settled && figure('stuck', t.stuck)}
        {settled && figure('trays', t.trays)}
      </span>
    </Link>
  );
}
