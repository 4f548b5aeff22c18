import type { BoardWeek } from '../shared/api-types';
import { made, numbered, span } from './board-grid-elements';
import type { GridSpeech } from './board-grid-types';

/** The heads of all columns, with the order in which rows stand. */
export function headCells(speech: GridSpeech, weeks: readonly BoardWeek[]): readonly HTMLElement[] {
  const fixed = speech.heads.map((word, i) => {
    const cell = made('div', ['bg-name', 'bg-format', 'bg-site'][i] ?? '', 'columnheader');
    cell.textContent = word;
    return cell;
  });
  const all = [...fixed, ...weeks.map((week) => weekHead(speech.week(week)))];
  all.forEach((cell, i) => {
    numbered(cell, i);
    const sort = speech.sortOf(i);
    cell.setAttribute('aria-sort', sort);
    if (sort !== 'none') cell.append(span('bg-sorted', sort === 'ascending' ? ' ▴' : ' ▾'));
  });
  return all;
}

function weekHead({ short, day, long, now }: ReturnType<GridSpeech['week']>): HTMLElement {
  const cell = made('div', now ? 'bg-week bg-now' : 'bg-week', 'columnheader');
  cell.append(span('bg-week-number', short), span('bg-week-day', day));
  cell.setAttribute('aria-label', long);
  cell.title = long;
  return cell;
}
