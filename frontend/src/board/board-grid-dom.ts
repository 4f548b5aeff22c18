import type { BoardCell, BoardRow, BoardWeek, FaultyOfRow } from '../shared/api-types';
import { nameParts } from '../shared/variety-name';
import { cellKey, isBlank, MARK_MS, readyAndPromised, type CellKey, type RowKey } from './board-state';

/**
 * The board's table, drawn by hand: rows are plain elements that are used again while scrolling, and a figure is
 * written only when it differs. (A component per cell cost ten times as much a frame, see docs/measurements.md.)
 * What a table component would bring is given back here: grid roles, row and column numbers, names for each cell, one
 * tab stop, arrows, Home, End, Page Up and Down, Enter. The row that holds the focus is never used again for another.
 */
export interface GridContent {
  readonly order: readonly RowKey[];
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  readonly weeks: readonly BoardWeek[];
  readonly changedMs: ReadonlyMap<CellKey, number>;
}

/** How the grid says things and whom it tells; replaced when language, sorting or site names change. */
export interface GridSpeech {
  readonly label: string;
  readonly heads: readonly [variety: string, format: string, site: string];
  week(week: BoardWeek): { readonly short: string; readonly day: string; readonly long: string; readonly now: boolean };
  sortOf(column: number): 'ascending' | 'descending' | 'none';
  /** The site of a row with its ship day. */
  site(row: BoardRow): string;
  count(n: number): string;
  /** How many batches of a row are in none of its figures. */
  faulty(batches: readonly FaultyOfRow[]): string;
  /** The words of one cell for those who hear it. */
  cell(cell: BoardCell): string;
  /** What its mark says; empty where it has none. */
  lessSure(cell: BoardCell): string;
}

export interface GridActions {
  sort(column: number): void;
  openRow(row: BoardRow): void;
  openCell(row: BoardRow, cell: BoardCell): void;
}

/** Columns before the weeks: variety, tray format, site. */
const FIXED = 3;
const SPARE_ROWS = 4;
/** A cultivar of more signs than this is drawn smaller: the part that is cut might be what tells it apart. */
const LONG_NAME = 30;

interface RowElement {
  readonly element: HTMLElement;
  readonly fixed: readonly [HTMLElement, HTMLElement, HTMLElement];
  readonly kind: HTMLElement;
  readonly cultivar: HTMLElement;
  readonly faulty: HTMLElement;
  readonly cells: CellElement[];
}

interface CellElement {
  readonly element: HTMLElement;
  readonly open: Text;
  readonly likely: Text;
  readonly small: Text;
  readonly risk: Text;
}

export class BoardGridDom {
  private content: GridContent = { order: [], rows: new Map(), weeks: [], changedMs: new Map() };
  private readonly head = made('div', 'bg-head', 'row');
  private readonly body = made('div', 'bg-body', 'rowgroup');
  private readonly shown = new Map<number, RowElement>();
  private free: RowElement[] = [];
  /** Where the tab stop is: -1 is the head. */
  private at = { row: 0, column: 0 };
  private frame = 0;
  private unmark: ReturnType<typeof setTimeout> | undefined;
  private readonly resized = new ResizeObserver(() => this.draw());

  constructor(
    private readonly host: HTMLElement,
    private speech: GridSpeech,
    private readonly actions: () => GridActions,
  ) {
    host.setAttribute('role', 'grid');
    this.head.setAttribute('aria-rowindex', '1');
    const headGroup = made('div', 'bg-head-group', 'rowgroup');
    headGroup.append(this.head);
    host.append(headGroup, this.body);
    host.addEventListener(
      'scroll',
      () => {
        this.frame ||= requestAnimationFrame(() => {
          this.frame = 0;
          this.draw();
        });
      },
      { passive: true },
    );
    host.addEventListener('keydown', (event) => this.onKey(event));
    host.addEventListener('click', (event) => this.onClick(event));
    host.addEventListener('focusin', (event) => this.onFocus(event));
    this.resized.observe(host);
  }

  destroy(): void {
    cancelAnimationFrame(this.frame);
    clearTimeout(this.unmark);
    this.resized.disconnect();
    this.host.replaceChildren();
  }

  speak(speech: GridSpeech): void {
    this.speech = speech;
    this.drawHead();
    for (const [index, row] of this.shown) this.fill(row, index, true);
  }

  show(content: GridContent): void {
    const before = this.content;
    this.content = content;
    const { host, body } = this;
    setText(host, 'aria-label', this.speech.label);
    setText(host, 'aria-rowcount', String(content.order.length + 1));
    setText(host, 'aria-colcount', String(content.weeks.length + FIXED));
    if (content.weeks !== before.weeks) {
      host.style.setProperty('--weeks', String(content.weeks.length));
      this.dropRows();
      this.drawHead();
    }
    body.style.height = `${content.order.length * this.rowPx}px`;
    if (content.order !== before.order) this.stayWithTheReader(before, content);
    this.at.row = Math.min(this.at.row, content.order.length - 1);
    this.at.column = Math.min(this.at.column, content.weeks.length + FIXED - 1);
    this.draw(true);
    if (content.changedMs !== before.changedMs) {
      clearTimeout(this.unmark);
      this.unmark = setTimeout(() => this.draw(true), MARK_MS + 50);
    }
  }

  scrollToTop(): void {
    this.host.scrollTop = 0;
  }

  private get rowPx(): number {
    return parseFloat(getComputedStyle(this.host).getPropertyValue('--row-px')) || 34;
  }

  /** Rows that left above the first visible one must not pull the rest up under the reader's eyes. */
  private stayWithTheReader(before: GridContent, after: GridContent): void {
    const px = this.rowPx;
    const first = Math.floor(this.host.scrollTop / px);
    const anchor = before.order[first];
    if (anchor === undefined || first === 0) return;
    const moved = after.order.indexOf(anchor) - first;
    const focused = before.order[this.at.row];
    if (moved < 0 && moved > -first) this.host.scrollTop += moved * px;
    const row = focused === undefined ? -1 : after.order.indexOf(focused);
    if (row >= 0) this.at.row = row;
  }

  private draw(refill = false): void {
    const { host, content, shown } = this;
    const px = this.rowPx;
    const visible = host.clientHeight - this.head.offsetHeight;
    const from = Math.max(0, Math.floor(host.scrollTop / px) - SPARE_ROWS);
    const until = Math.min(content.order.length, Math.ceil((host.scrollTop + visible) / px) + SPARE_ROWS);
    const focused = document.activeElement;
    for (const [index, row] of shown) {
      if (index >= from && index < until) continue;
      if (index < content.order.length && row.element.contains(focused)) continue;
      shown.delete(index);
      this.free.push(row);
    }
    for (let index = from; index < until; index++) {
      const there = shown.get(index);
      if (there && !refill) continue;
      const row = there ?? this.free.pop() ?? this.makeRow();
      shown.set(index, row);
      this.fill(row, index, false);
      const y = `translateY(${index * px}px)`;
      if (row.element.style.transform !== y) row.element.style.transform = y;
      if (row.element.parentNode !== this.body) this.body.append(row.element);
    }
    if (refill) for (const [index, row] of shown) if (index < from || index >= until) this.fill(row, index, false);
    for (const row of this.free) row.element.remove();
    this.putTabStop();
  }

  private dropRows(): void {
    for (const row of this.shown.values()) row.element.remove();
    this.shown.clear();
    this.free = [];
  }

  private makeRow(): RowElement {
    const element = made('div', 'bg-row', 'row');
    const fixed = [
      made('div', 'bg-name', 'rowheader'),
      made('div', 'bg-format', 'gridcell'),
      made('div', 'bg-site', 'gridcell'),
    ] as const;
    fixed.forEach((each, i) => number(each, i));
    // In the text as the code for cultivated plants writes it; the style sheet shows the cultivar first.
    const [kind, cultivar, faulty] = [span('bg-kind', ''), span('bg-cultivar', ''), span('bg-faulty', '')];
    const below = span('bg-below', '');
    below.append(kind, faulty);
    fixed[0].append(below, cultivar);
    const cells = this.content.weeks.map((_, i) => makeCell(i + FIXED));
    element.append(...fixed, ...cells.map((cell) => cell.element));
    return { element, fixed: [...fixed], kind, cultivar, faulty, cells };
  }

  private fill(row: RowElement, index: number, reworded: boolean): void {
    const key = this.content.order[index];
    const data = key && this.content.rows.get(key);
    if (!data) return;
    setText(row.element, 'aria-rowindex', String(index + 2));
    const [name, format, site] = row.fixed;
    const { kind, cultivar } = nameParts(data.varietyName);
    setContent(row.kind, kind === '' ? '' : `${kind} `);
    setContent(row.cultivar, cultivar);
    row.cultivar.classList.toggle('bg-long', cultivar.length > LONG_NAME);
    setContent(row.faulty, data.faulty.length === 0 ? '' : `✕ ${this.speech.faulty(data.faulty)}`);
    setContent(format, data.trayFormat);
    setContent(site, this.speech.site(data));
    setText(
      name,
      'title',
      [data.varietyName, data.variety, ...data.faulty.map(({ batch }) => `✕ ${batch}`)].join('\n'),
    );
    row.element.classList.toggle('bg-even', index % 2 === 1);
    data.cells.forEach((cell, i) => {
      const into = row.cells[i];
      if (into) this.fillCell(into, cell, this.content.changedMs.get(cellKey(key, cell.week)), reworded);
    });
  }

  private fillCell(into: CellElement, cell: BoardCell, changedMs: number | undefined, reworded: boolean): void {
    const { count } = this.speech;
    const blank = isBlank(cell);
    const likely = cell.likely > cell.open ? `~${count(cell.likely)}` : '';
    const wrote =
      +setData(into.open, blank ? '' : count(cell.open)) |
      +setData(into.likely, likely) |
      +setData(into.small, readyAndPromised(cell, count)) |
      +setTitle(into.element, this.speech.lessSure(cell)) |
      +setData(into.risk, cell.atRisk > 0 ? `▲${count(cell.atRisk)}` : '');
    const { element } = into;
    if (wrote || reworded) {
      setText(element, 'aria-label', this.speech.cell(cell));
      element.classList.toggle('bg-none', cell.open === 0);
      element.classList.toggle('bg-blank', blank);
      // Long figures are drawn smaller, never cut: half a number is a wrong number.
      element.classList.toggle('bg-tight', into.open.data.length + likely.length > 6);
      element.classList.toggle('bg-risk', cell.atRisk > 0);
    }
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

  private drawHead(): void {
    const { heads } = this.speech;
    const focused = this.head.contains(document.activeElement);
    const fixed = heads.map((word, i) => {
      const cell = made('div', ['bg-name', 'bg-format', 'bg-site'][i] ?? '', 'columnheader');
      cell.textContent = word;
      return cell;
    });
    const weeks = this.content.weeks.map((week) => {
      const { short, day, long, now } = this.speech.week(week);
      const cell = made('div', now ? 'bg-week bg-now' : 'bg-week', 'columnheader');
      cell.append(span('bg-week-number', short), span('bg-week-day', day));
      cell.setAttribute('aria-label', long);
      cell.title = long;
      return cell;
    });
    const all = [...fixed, ...weeks];
    all.forEach((cell, i) => {
      number(cell, i);
      const sort = this.speech.sortOf(i);
      cell.setAttribute('aria-sort', sort);
      if (sort !== 'none') cell.append(span('bg-sorted', sort === 'ascending' ? ' ▴' : ' ▾'));
    });
    this.head.replaceChildren(...all);
    this.putTabStop();
    if (focused) this.elementAt()?.focus({ preventScroll: true });
  }

  // --- Focus and keys ---

  private elementAt({ row, column } = this.at): HTMLElement | undefined {
    const parent = row < 0 ? this.head : this.shown.get(row)?.element;
    return parent?.children[column] as HTMLElement | undefined;
  }

  private putTabStop(): void {
    const stop = this.elementAt() ?? this.elementAt({ row: -1, column: this.at.column });
    for (const old of this.host.querySelectorAll<HTMLElement>('[tabindex="0"]')) if (old !== stop) old.tabIndex = -1;
    if (stop) stop.tabIndex = 0;
  }

  private goTo(row: number, column: number): void {
    const { order, weeks } = this.content;
    this.at = {
      row: Math.max(-1, Math.min(order.length - 1, row)),
      column: Math.max(0, Math.min(weeks.length + FIXED - 1, column)),
    };
    this.scrollToRow(this.at.row);
    this.draw();
    this.elementAt()?.focus({ preventScroll: true });
    this.scrollToColumn();
  }

  private scrollToRow(row: number): void {
    if (row < 0) return;
    const { host } = this;
    const px = this.rowPx;
    const visible = host.clientHeight - this.head.offsetHeight;
    if (row * px < host.scrollTop) host.scrollTop = row * px;
    else if ((row + 1) * px > host.scrollTop + visible) host.scrollTop = (row + 1) * px - visible;
  }

  private scrollToColumn(): void {
    const element = this.elementAt();
    if (!element || this.at.column < FIXED) return;
    const { host } = this;
    const left = element.offsetLeft;
    const pinned = [...this.head.children]
      .slice(0, FIXED)
      .filter((each) => getComputedStyle(each).position === 'sticky');
    const hidden = pinned.reduce((sum, each) => sum + (each as HTMLElement).offsetWidth, 0);
    if (left - hidden < host.scrollLeft) host.scrollLeft = left - hidden;
    else if (left + element.offsetWidth > host.scrollLeft + host.clientWidth) {
      host.scrollLeft = left + element.offsetWidth - host.clientWidth;
    }
  }

  private onKey(event: KeyboardEvent): void {
    if (event.altKey || event.metaKey) return;
    const { row, column } = this.at;
    const page = Math.max(1, Math.floor((this.host.clientHeight - this.head.offsetHeight) / this.rowPx) - 1);
    const last = this.content.order.length - 1;
    const lastColumn = this.content.weeks.length + FIXED - 1;
    const moves: Record<string, () => void> = {
      ArrowDown: () => this.goTo(row + 1, column),
      ArrowUp: () => this.goTo(row - 1, column),
      ArrowRight: () => this.goTo(row, column + 1),
      ArrowLeft: () => this.goTo(row, column - 1),
      PageDown: () => this.goTo(row + page, column),
      PageUp: () => this.goTo(Math.max(0, row - page), column),
      Home: () => (event.ctrlKey ? this.goTo(0, 0) : this.goTo(row, 0)),
      End: () => (event.ctrlKey ? this.goTo(last, lastColumn) : this.goTo(row, lastColumn)),
      Enter: () => this.act(),
      ' ': () => this.act(),
    };
    const move = moves[event.key];
    if (!move) return;
    event.preventDefault();
    move();
  }

  private onClick(event: MouseEvent): void {
    if (this.locate(event.target)) {
      this.putTabStop();
      this.elementAt()?.focus({ preventScroll: true });
      this.act();
    }
  }

  private onFocus(event: FocusEvent): void {
    if (this.locate(event.target)) this.putTabStop();
  }

  private locate(target: EventTarget | null): boolean {
    const cell = target instanceof Element ? target.closest<HTMLElement>('[aria-colindex]') : null;
    const row = cell?.parentElement;
    if (!cell || !row) return false;
    this.at = {
      row: Number(row.getAttribute('aria-rowindex')) - 2,
      column: Number(cell.getAttribute('aria-colindex')) - 1,
    };
    return true;
  }

  private act(): void {
    const { row, column } = this.at;
    if (row < 0) return this.actions().sort(column);
    const key = this.content.order[row];
    const data = key && this.content.rows.get(key);
    if (!data) return;
    const cell = data.cells[column - FIXED];
    if (cell) this.actions().openCell(data, cell);
    else this.actions().openRow(data);
  }

  /** Puts the focus on the first row. */
  focusFirst(): void {
    if (this.content.order.length > 0) this.goTo(0, 0);
  }

  /** Puts the focus back on a cell after what it opened was closed. */
  focusCell(row: RowKey, week: string): void {
    const index = this.content.order.indexOf(row);
    const column = this.content.weeks.findIndex((each) => each.week === week);
    if (index >= 0 && column >= 0) this.goTo(index, column + FIXED);
  }
}

function makeCell(column: number): CellElement {
  const element = made('div', 'bg-cell', 'gridcell');
  number(element, column);
  const [open, likely, small, risk] = ['bg-open', 'bg-likely', 'bg-small', 'bg-at-risk'].map((name) => {
    const holder = span(name, '');
    const text = document.createTextNode('');
    holder.append(text);
    element.append(holder);
    return text;
  }) as [Text, Text, Text, Text];
  return { element, open, likely, small, risk };
}

function made(tag: string, className: string, role: string): HTMLElement {
  const element = document.createElement(tag);
  element.className = className;
  element.setAttribute('role', role);
  return element;
}

function number(element: HTMLElement, column: number): void {
  element.setAttribute('aria-colindex', String(column + 1));
  element.tabIndex = -1;
}

function span(className: string, text: string): HTMLElement {
  const element = document.createElement('span');
  element.className = className;
  element.textContent = text;
  return element;
}

function setText(element: HTMLElement, attribute: string, text: string): void {
  if (element.getAttribute(attribute) !== text) element.setAttribute(attribute, text);
}

function setContent(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

function setTitle(element: HTMLElement, text: string): boolean {
  if (element.title === text) return false;
  element.title = text;
  return true;
}

function setData(node: Text, text: string): boolean {
  if (node.data === text) return false;
  node.data = text;
  return true;
}
