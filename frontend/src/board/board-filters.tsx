import { useEffect, useState, type ReactNode } from 'react';
import type { BoardWeek } from '../shared/api-types';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useCrops } from '../shared/setup-lists';
import { dateIn, plusWeeks, weekOf } from '../shared/weeks';
import {
  confidenceTyped,
  DEFAULT_CONFIDENCE,
  DEFAULT_WEEKS,
  traysTyped,
  weekTyped,
  type BoardFilter,
} from './board-filter-state';
import { boardMessages } from './board-messages';

interface BoardFiltersProps {
  readonly filter: BoardFilter;
  readonly change: (change: Partial<BoardFilter>) => void;
  readonly weeks: readonly BoardWeek[];
  readonly phone: boolean;
}

const CONFIDENCES = [0.5, 0.8, 0.9, 0.95];
const WEEK_COUNTS = [4, 8, 12, 16, 26, 52];

/** Text, crop, weeks and confidence. The site is chosen in the header, for all screens. */
export function BoardFilters({ filter, change, weeks, phone }: BoardFiltersProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const crops = useCrops().data ?? [];
  const current = weekOf(dateIn(undefined, Date.now()));
  const shownFrom = filter.from ?? weeks[0]?.week ?? current;
  const step = (by: number) => change({ from: plusWeeks(shownFrom, by) });
  const counts = WEEK_COUNTS.includes(filter.weeks)
    ? WEEK_COUNTS
    : [...WEEK_COUNTS, filter.weeks].sort((a, b) => a - b);
  const changed =
    filter.crop !== undefined ||
    filter.from !== undefined ||
    filter.weeks !== DEFAULT_WEEKS ||
    filter.confidence !== DEFAULT_CONFIDENCE ||
    filter.openOnly ||
    filter.atLeast !== undefined ||
    filter.riskOnly ||
    filter.totals;
  return (
    <form
      className="board-filters rc-no-print"
      role="search"
      aria-label={t.filters}
      onSubmit={(event) => event.preventDefault()}
    >
      <label className="filter-find">
        <span>{t.find}</span>
        <input type="search" value={filter.text} onChange={(event) => change({ text: event.target.value })} />
      </label>
      <Rest phone={phone} title={t.more} changed={changed}>
        <label>
          <span>{t.crop}</span>
          <select value={filter.crop ?? ''} onChange={(event) => change({ crop: event.target.value || undefined })}>
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
        <div className="filter-weeks">
          <Typed
            key={shownFrom}
            label={t.fromWeek}
            value={shownFrom}
            hint={t.fromHint}
            wrong={t.weekWrong}
            read={(text) => weekTyped(text, current)}
            take={(from) => change({ from: from === current ? undefined : from })}
          />
          <Button theme="tertiary" aria-label={t.earlier} title={t.earlier} onClick={() => step(-4)}>
            ◂
          </Button>
          <Button theme="tertiary" aria-label={t.later} title={t.later} onClick={() => step(4)}>
            ▸
          </Button>
          {filter.from !== undefined && filter.from !== current && (
            <Button theme="tertiary" onClick={() => change({ from: undefined })}>
              {t.today}
            </Button>
          )}
        </div>
        <label>
          <span>{t.weeks}</span>
          <select value={filter.weeks} onChange={(event) => change({ weeks: Number(event.target.value) })}>
            {counts.map((n) => (
              <option key={n}>{n}</option>
            ))}
          </select>
        </label>
        <Typed
          key={filter.confidence}
          label={t.confidence}
          value={format.percent(filter.confidence, 2)}
          wrong={t.confidenceWrong}
          read={confidenceTyped}
          take={(confidence) => change({ confidence })}
          choices={CONFIDENCES.map((each) => format.percent(each))}
          choicesId="confidences"
        />
        <Typed
          label={t.atLeast}
          value={filter.atLeast === undefined ? '' : String(filter.atLeast)}
          wrong={t.traysWrong}
          read={traysTyped}
          take={(trays) => change({ atLeast: trays === 0 ? undefined : trays })}
        />
        <Check label={t.openOnly} on={filter.openOnly} set={(openOnly) => change({ openOnly })} />
        <Check label={t.riskOnly} on={filter.riskOnly} set={(riskOnly) => change({ riskOnly })} />
        <Check label={t.totals} on={filter.totals} set={(totals) => change({ totals })} />
      </Rest>
    </form>
  );
}

function Check({ label, on, set }: { label: string; on: boolean; set: (on: boolean) => void }) {
  return (
    <label className="filter-check">
      <input type="checkbox" checked={on} onChange={(event) => set(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}

/** On a phone all but the text is folded away, open only when it holds something. */
function Rest({
  phone,
  title,
  changed,
  children,
}: {
  phone: boolean;
  title: string;
  changed: boolean;
  children: ReactNode;
}) {
  if (!phone) return children;
  return (
    <details className="filter-rest" open={changed}>
      <summary>{title}</summary>
      <div>{children}</div>
    </details>
  );
}

interface TypedProps<V> {
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  readonly wrong: string;
  readonly read: (text: string) => V | undefined;
  readonly take: (value: V) => void;
  readonly choices?: readonly string[];
  readonly choicesId?: string;
}

/** Takes what is typed when it can be read; otherwise keeps it and says how to correct it. */
function Typed<V>({ label, value, hint, wrong, read, take, choices, choicesId }: TypedProps<V>) {
  const [typed, setTyped] = useState(value);
  useEffect(() => setTyped(value), [value]);
  const understood = read(typed);
  const bad = understood === undefined;
  const settle = () => {
    if (understood !== undefined && typed !== value) take(understood);
  };
  return (
    <label className="filter-typed">
      <span>{label}</span>
      <input
        type="text"
        value={typed}
        title={hint}
        aria-invalid={bad}
        {...(bad ? { 'aria-describedby': `wrong-${label}` } : {})}
        {...(choicesId ? { list: choicesId } : {})}
        onChange={(event) => {
          setTyped(event.target.value);
          if (choices?.includes(event.target.value)) {
            const picked = read(event.target.value);
            if (picked !== undefined) take(picked);
          }
        }}
        onBlur={settle}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle();
        }}
      />
      {choices && (
        <datalist id={choicesId}>
          {choices.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      )}
      {bad && (
        <span id={`wrong-${label}`} role="alert" className="filter-wrong">
          ✕ {wrong}
        </span>
      )}
    </label>
  );
}
