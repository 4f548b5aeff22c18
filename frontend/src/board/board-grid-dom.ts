import { headCells } from './board-grid-head';
import { made, setAttribute } from './board-grid-elements';
import { placeAfter, within, type GridPlace } from './board-grid-keys';
import { BoardGridRow } from './board-grid-row';
import { FIXED, type GridActions, type GridContent, type GridSpeech } from './board-grid-types';
import { MARK_MS, type RowKey } from './board-state';

const SPARE_ROWS = 4;

/**
 * The board's table, drawn by hand: rows are plain elements that are used again while scrolling, and a figure is
 * written only when it differs. (A component per cell cost ten times as much a frame, see docs/measurements.md.)
 * What a table component would bring is given back here: grid roles, row and column numbers, names for each cell, one
 * tab stop, arrows, Home, End, Page Up and Down, Enter. The row that holds the focus is never used again for another.
 */
export class BoardGridDom {
  private content: GridContent = { order: [], rows: new Map(), weeks: [], changedMs: new Map() };
  private readonly head = made('div', 'bg-head', 'row');
  private readonly body = made('div', 'bg-body', 'rowgroup');
  private readonly shown = new Map<number, BoardGridRow>();
  private free: BoardGridRow[] = [];
  /** Where the tab stop is: -1 is the head. */
  private at: GridPlace = { row: 0, column: 0 };
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
    setAttribute(host, 'aria-label', this.speech.label);
    setAttribute(host, 'aria-rowcount', String(content.order.length + 1));
    setAttribute(host, 'aria-colcount', String(content.weeks.length + FIXED));
    if (content.weeks !== before.weeks) {
      host.style.setProperty('--weeks', String(content.weeks.length));
      this.dropRows();
      this.drawHead();
    }
    body.style.height = `${content.order.length * this.rowPx}px`;
    if (content.order !== before.order) this.stayWithTheReader(before, content);
    this.at = within(this.at, { rows: content.order.length, weeks: content.weeks.length });
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
    if (row >= 0) this.at = { ...this.at, row };
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
      const row = there ?? this.free.pop() ?? new BoardGridRow(content.weeks.length);
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

  private fill(row: BoardGridRow, index: number, reworded: boolean): void {
    const key = this.content.order[index];
    const data = key && this.content.rows.get(key);
    if (data) row.fill(key, data, index, this.content.changedMs, this.speech, reworded);
  }

  private drawHead(): void {
    const focused = this.head.contains(document.activeElement);
    this.head.replaceChildren(...headCells(this.speech, this.content.weeks));
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

  private goTo(place: GridPlace): void {
    this.at = place;
    this.scrollToRow(place.row);
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

  private get size() {
    const { order, weeks } = this.content;
    const page = Math.max(1, Math.floor((this.host.clientHeight - this.head.offsetHeight) / this.rowPx) - 1);
    return { rows: order.length, weeks: weeks.length, page };
  }

  private onKey(event: KeyboardEvent): void {
    if (event.altKey || event.metaKey) return;
    const acts = event.key === 'Enter' || event.key === ' ';
    const place = acts ? undefined : placeAfter(event.key, event.ctrlKey, this.at, this.size);
    if (!acts && !place) return;
    event.preventDefault();
    if (place) this.goTo(place);
    else this.act();
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
    if (this.content.order.length > 0) this.goTo({ row: 0, column: 0 });
  }

  /** Puts the focus back on a cell after what it opened was closed. */
  focusCell(row: RowKey, week: string): void {
    const index = this.content.order.indexOf(row);
    const column = this.content.weeks.findIndex((each) => each.week === week);
    if (index >= 0 && column >= 0) this.goTo({ row: index, column: column + FIXED });
  }
}
