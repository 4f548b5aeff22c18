import type { BoardCell, BoardRow } from '../shared/api-types';
import { nameParts } from '../shared/variety-name';
import { made, numbered, setAttribute, setContent, setData, setTitle, span } from './board-grid-elements';
import { FIXED, type GridSpeech } from './board-grid-types';
import { cellKey, isBlank, MARK_MS, readyAndPromised, type CellKey, type RowKey } from './board-state';

/** A cultivar of more signs than this is drawn smaller: the part that is cut might be what tells it apart. */
const LONG_NAME = 30;

/** One row on the screen, used again for another row of the board when it has scrolled away. */
export class BoardGridRow {
  readonly element = made('div', 'bg-row', 'row');
  private readonly name = made('div', 'bg-name', 'rowheader');
  private readonly format = made('div', 'bg-format', 'gridcell');
  private readonly site = made('div', 'bg-site', 'gridcell');
  // In the text as the code for cultivated plants writes it; the style sheet shows the cultivar first.
  private readonly kind = span('bg-kind', '');
  private readonly cultivar = span('bg-cultivar', '');
  private readonly faulty = span('bg-faulty', '');
  private readonly cells: readonly BoardGridCell[];

  constructor(weeks: number) {
    const fixed = [this.name, this.format, this.site];
    fixed.forEach(numbered);
    const below = span('bg-below', '');
    below.append(this.kind, this.faulty);
    this.name.append(below, this.cultivar);
    this.cells = Array.from({ length: weeks }, (_, i) => new BoardGridCell(i + FIXED));
    this.element.append(...fixed, ...this.cells.map(({ element }) => element));
  }

  /** @param reworded whether the words have changed even where the figures have not */
  fill(
    key: RowKey,
    row: BoardRow,
    index: number,
    changedMs: ReadonlyMap<CellKey, number>,
    speech: GridSpeech,
    reworded: boolean,
  ): void {
    setAttribute(this.element, 'aria-rowindex', String(index + 2));
    const { kind, cultivar } = nameParts(row.varietyName);
    setContent(this.kind, kind === '' ? '' : `${kind} `);
    setContent(this.cultivar, cultivar);
    this.cultivar.classList.toggle('bg-long', cultivar.length > LONG_NAME);
    setContent(this.faulty, row.faulty.length === 0 ? '' : `✕ ${speech.faulty(row.faulty)}`);
    setContent(this.format, row.trayFormat);
    setContent(this.site, speech.site(row));
    setTitle(this.name, [row.varietyName, row.variety, ...row.faulty.map(({ batch }) => `✕ ${batch}`)].join('\n'));
    this.element.classList.toggle('bg-even', index % 2 === 1);
    row.cells.forEach((cell, i) => this.cells[i]?.fill(cell, changedMs.get(cellKey(key, cell.week)), speech, reworded));
  }
}

class BoardGridCell {
  readonly element = made('div', 'bg-cell', 'gridcell');
  private readonly open = this.holder('bg-open');
  private readonly likely = this.holder('bg-likely');
  private readonly small = this.holder('bg-small');
  private readonly risk = this.holder('bg-at-risk');

  constructor(column: number) {
    numbered(this.element, column);
  }

  private holder(className: string): Text {
    const holder = span(className, '');
    const text = document.createTextNode('');
    holder.append(text);
    this.element.append(holder);
    return text;
  }

  fill(cell: BoardCell, changedMs: number | undefined, speech: GridSpeech, reworded: boolean): void {
    const { element } = this;
    const { count } = speech;
    const blank = isBlank(cell);
    const likely = cell.likely > cell.open ? `~${count(cell.likely)}` : '';
    const wrote =
      +setData(this.open, blank ? '' : count(cell.open)) |
      +setData(this.likely, likely) |
      +setData(this.small, readyAndPromised(cell, count)) |
      +setTitle(element, speech.lessSure(cell)) |
      +setData(this.risk, cell.atRisk > 0 ? `▲${count(cell.atRisk)}` : '');
    if (wrote || reworded) {
      setAttribute(element, 'aria-label', speech.cell(cell));
      element.classList.toggle('bg-none', cell.open === 0);
      element.classList.toggle('bg-blank', blank);
      // Long figures are drawn smaller, never cut: half a number is a wrong number.
      element.classList.toggle('bg-tight', this.open.data.length + likely.length > 6);
      element.classList.toggle('bg-risk', cell.atRisk > 0);
    }
    this.mark(changedMs);
  }

  private mark(changedMs: number | undefined): void {
    const { element } = this;
    const fresh = changedMs !== undefined && Date.now() - changedMs < MARK_MS;
    if (fresh && element.dataset['changed'] !== String(changedMs)) {
      element.dataset['changed'] = String(changedMs);
      element.classList.remove('bg-changed');
      // Restarts the animation when the same cell changes twice.
      void element.offsetWidth;
      element.classList.add('bg-changed');
    } else if (!fresh && element.dataset['changed'] !== undefined) {
      delete element.dataset['changed'];
      element.classList.remove('bg-changed');
    }
  }
}
