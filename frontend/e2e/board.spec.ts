import { expect, test, type Page } from '@playwright/test';
import type { BoardBody, BoardCell, BoardRow, Site } from '../src/shared/api-types';
import { expectAccessible, expectAccessibleByDayAndNight } from './accessible';

/** The board against the demo. What a test expects is read from the server or counted, never taken from the screen. */

async function openBoard(page: Page, query = ''): Promise<void> {
  await page.goto(`/board${query}`);
  await expect(page.getByRole('grid').getByRole('gridcell').first()).toBeVisible();
}

async function boardOf(page: Page, query = 'weeks=8'): Promise<BoardBody> {
  const answer = await page.request.get(`/api/board?${query}`);
  expect(answer.ok()).toBe(true);
  return (await answer.json()) as BoardBody;
}

/** A row that has something open in at least two weeks, so that promising from one may lower both. */
function rowWithRoom({ rows }: BoardBody): { row: BoardRow; cell: BoardCell } {
  for (const row of rows) {
    const open = row.cells.filter((cell) => cell.open >= 4);
    if (open.length >= 2 && open[0]) return { row, cell: open[0] };
  }
  throw new Error('the demo has no item with four trays open in two weeks');
}

/** What is in the dialog; its host element has no size of its own. */
const openCell = (page: Page) => page.getByRole('dialog').locator('.cell');

const cellAddress = (row: BoardRow, week: string) =>
  encodeURIComponent([row.variety, row.trayFormat, row.site, week].join('~'));

test('opens on today’s open trays with no click', async ({ page }) => {
  await page.goto('/');
  await expect(page).toHaveURL(/\/board$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Board');

  const { rows, weeks } = await boardOf(page);
  const grid = page.getByRole('grid');
  await expect(grid).toHaveAttribute('aria-rowcount', String(rows.length + 1));
  await expect(grid.getByRole('columnheader')).toHaveCount(3 + weeks.length);
  await expect(grid.getByRole('columnheader').nth(3)).toHaveAccessibleName(
    /^Week \d+(, \w{3},? \d+ \w+ \d{4})+, this week$/,
  );
  // each site's own ship day: of the next week, as no day of it can be past
  const [first] = rows.filter(({ cells }) => cells.length > 1);
  const nextDays = [...new Set(rows.map(({ cells }) => cells[1]?.date))];
  const head = grid.getByRole('columnheader').nth(4);
  for (const date of nextDays) {
    await expect(head).toHaveAccessibleName(new RegExp(` ${Number(date?.slice(8))} \\w+ ${date?.slice(0, 4)}`));
  }
  await openBoard(page, `?site=${first?.site}`);
  await expect(head.locator('.bg-week-day')).toHaveText(new RegExp(`^${Number(first?.cells[1]?.date.slice(8))} \\w+$`));
  await page.goto('/');
  await expect(grid.getByRole('gridcell', { name: /[1-9]\d* open/ }).first()).toBeVisible();
  await expect(page.locator('.board-today')).toContainText(/Open this week \d+/);
  await expect(page.locator('.board-today')).toContainText(/At risk:? \d+/);
});

test('shows the figures the server gives', async ({ page }) => {
  const { row, cell } = rowWithRoom(await boardOf(page));
  await openBoard(page, `?text=${encodeURIComponent(`${row.variety} ${row.trayFormat} ${row.site}`)}`);

  const shown = page.getByRole('row').filter({ hasText: row.varietyName }).first();
  const column = row.cells.findIndex(({ week }) => week === cell.week);
  await expect(shown.getByRole('gridcell').nth(2 + column)).toHaveAccessibleName(new RegExp(`^${cell.open} open`));
});

test('keeps its filter over reload, back and a pasted link', async ({ page, context }) => {
  const { rows } = await boardOf(page);
  const { crop } = rows[0] as BoardRow;
  const ofCrop = rows.filter((row) => row.crop === crop).length;
  const count = (page: Page) => page.getByRole('grid').getAttribute('aria-rowcount');
  await openBoard(page);

  await page.getByRole('combobox', { name: 'Crop' }).selectOption(crop);
  await expect(page).toHaveURL(new RegExp(`crop=${crop}`));
  await expect.poll(() => count(page)).toBe(String(ofCrop + 1));

  await page.reload();
  await expect.poll(() => count(page)).toBe(String(ofCrop + 1));
  await expect(page.getByRole('combobox', { name: 'Crop' })).toHaveValue(crop);

  const pasted = await context.newPage();
  await pasted.goto(page.url());
  await expect.poll(() => count(pasted)).toBe(String(ofCrop + 1));
  await pasted.close();

  await page.goBack();
  await expect.poll(() => count(page)).toBe(String(rows.length + 1));
});

test('is reached cell by cell from the keyboard', async ({ page }) => {
  await openBoard(page);
  const grid = page.getByRole('grid');
  await grid.locator('[tabindex="0"]').focus();
  const at = () =>
    page.evaluate(() => {
      const cell = document.activeElement;
      return `${cell?.parentElement?.getAttribute('aria-rowindex')} ${cell?.getAttribute('aria-colindex')}`;
    });
  const rows = Number(await grid.getAttribute('aria-rowcount'));
  const columns = Number(await grid.getAttribute('aria-colcount'));

  expect(await at()).toBe('2 1');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  expect(await at()).toBe('3 2');
  await page.keyboard.press('End');
  expect(await at()).toBe(`3 ${columns}`);
  await page.keyboard.press('Control+End');
  expect(await at()).toBe(`${rows} ${columns}`);
  await page.keyboard.press('Control+Home');
  expect(await at()).toBe('2 1');
  await page.keyboard.press('PageDown');
  expect(Number((await at()).split(' ')[0])).toBeGreaterThan(10);
  await page.keyboard.press('End');
  const before = await at();

  await page.keyboard.press('Enter');
  await expect(openCell(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(openCell(page)).toBeHidden();
  expect(await at()).toBe(before);
});

test('comes to the search with a slash and opens what is found', async ({ page }) => {
  const { rows } = await boardOf(page);
  const { variety, varietyName } = rows.at(-1) as BoardRow;
  await openBoard(page);

  await page.keyboard.press('/');
  await page.keyboard.type(varietyName);
  const option = page.getByRole('listbox').getByRole('option').first();
  await expect(option).toContainText(varietyName);
  // It lies over what is below: a trial press finds nothing in between.
  await option.click({ trial: true });
  await page.keyboard.press('Enter');

  await expect(page).toHaveURL(new RegExp(`text=${variety}`));
});

test('a promise lowers open there and in overlapping weeks, and undo gives it back', async ({ page, context }) => {
  const before = await boardOf(page);
  const { row, cell } = rowWithRoom(before);
  // Another screen, open before: it must change without a reload.
  const watcher = await context.newPage();
  await openBoard(watcher, `?text=${encodeURIComponent(`${row.variety} ${row.trayFormat} ${row.site}`)}`);
  const column = row.cells.findIndex(({ week }) => week === cell.week);
  const watched = watcher
    .getByRole('row')
    .filter({ hasText: row.varietyName })
    .first()
    .getByRole('gridcell')
    .nth(2 + column);

  await page.goto(`/board?cell=${cellAddress(row, cell.week)}`);
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Customer').fill('Garden Row');
  await dialog.getByRole('textbox', { name: /^Trays/ }).fill('2');
  await dialog.getByRole('button', { name: 'Promise', exact: true }).click();
  await expect(openCell(page)).toBeHidden();

  await expect(watched).toHaveAccessibleName(new RegExp(`, ${cell.promised + 2} promised`));
  const after = (await boardOf(page)).rows.find(
    (each) => each.variety === row.variety && each.trayFormat === row.trayFormat && each.site === row.site,
  );
  const openNow = after?.cells.find(({ week }) => week === cell.week)?.open ?? NaN;
  expect(openNow).toBeLessThanOrEqual(cell.open - 2 + openDrift(row, after, cell.week));
  for (const each of after?.cells ?? []) {
    const was = row.cells.find(({ week }) => week === each.week);
    if (was && was.ready === each.ready) expect(each.open, each.week).toBeLessThanOrEqual(was.open);
  }

  // Under a date to come it is not told as delivered.
  await watcher.goto(`/board?cell=${cellAddress(row, cell.week)}`);
  const own = watcher
    .getByRole('dialog')
    .getByRole('row', { name: /^Garden Row/ })
    .first();
  await expect(own).toContainText('can be kept');
  await watcher.goBack();

  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(watched).toHaveAccessibleName(new RegExp(`, ${cell.promised} promised`));
});

/** The demo's sensors may make trays ready while the test runs; that much more may be open. */
function openDrift(before: BoardRow, after: BoardRow | undefined, week: string): number {
  const ready = (row: BoardRow | undefined) => row?.cells.find((cell) => cell.week === week)?.ready ?? 0;
  return Math.max(0, ready(after) - ready(before));
}

test('a promise too large says what is open and keeps what was typed', async ({ page }) => {
  const { row, cell } = rowWithRoom(await boardOf(page));
  await page.goto(`/board?cell=${cellAddress(row, cell.week)}`);
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Customer').fill('Garden Row');
  const trays = dialog.getByRole('textbox', { name: /^Trays/ });
  await trays.fill('19000');
  await dialog.getByRole('button', { name: 'Promise', exact: true }).click();

  await expect(dialog.getByRole('alert')).toContainText(/Asked for .*: 19,000\. Open then: \d+\./);
  await expect(trays).toHaveAttribute('aria-invalid', 'true');
  await expect(trays).toHaveValue('19000');
  await dialog.getByRole('button', { name: /^A part: \d+ trays$/ }).click();
  await expect(trays).toHaveValue(/^\d{1,4}$/);
});

test('an opened cell calls houses and sites by their names', async ({ page }) => {
  const { row, cell } = rowWithRoom(await boardOf(page));
  const names = async (path: string) => (await (await page.request.get(path)).json()) as readonly Site[];
  const houses = await names('/api/houses');
  await page.goto(`/board?cell=${cellAddress(row, cell.week)}`);
  const dialog = page.getByRole('dialog');
  const shown = dialog.getByRole('table').filter({ hasText: 'House' }).first().locator('tbody td').first();
  await expect(shown).toHaveText(new RegExp(houses.map(({ name }) => `^${name}$`).join('|')));

  await dialog.getByRole('button', { name: 'Another line' }).click();
  const site = (await names('/api/sites')).find(({ code }) => code === row.site);
  await expect(
    dialog.locator('option', { hasText: row.varietyName }).filter({ hasText: site?.name ?? '' }),
  ).not.toHaveCount(0);
});

test('a half-typed order is kept over the weeks, and Escape asks before it is lost', async ({ page }) => {
  const { row, cell } = rowWithRoom(await boardOf(page));
  await page.goto(`/board?cell=${cellAddress(row, cell.week)}`);
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Customer').fill('Garden Row');
  await dialog.getByRole('textbox', { name: /^Trays/ }).fill('2');
  const week = dialog.locator('.cell-week strong');
  const before = await week.textContent();
  await dialog.getByRole('button', { name: 'Week after' }).click();
  await expect(week).not.toHaveText(before ?? '');
  await expect(dialog.getByLabel('Customer')).toHaveValue('Garden Row');
  await expect(dialog.getByRole('textbox', { name: /^Trays/ })).toHaveValue('2');

  await page.keyboard.press('Escape');
  await expect(dialog.getByText('The order is not promised yet.')).toBeVisible();
  await dialog.getByRole('button', { name: 'Keep typing' }).click();
  await expect(dialog.getByRole('textbox', { name: /^Trays/ })).toHaveValue('2');
  await page.keyboard.press('Escape');
  await dialog.getByRole('button', { name: 'Discard it' }).click();
  await expect(openCell(page)).toBeHidden();
});

test('the search finds through a slip and leaves the focus on the row found', async ({ page }) => {
  const { rows } = await boardOf(page);
  const { varietyName } = rows.at(-1) as BoardRow;
  await openBoard(page);
  await page.keyboard.press('/');
  // The second and third letter of the genus swapped.
  await page.keyboard.type(varietyName.replace(/^(.)(.)(.)/, '$1$3$2'));
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/text=/);
  await expect(page.locator('.board-grid :focus')).toContainText(varietyName);
});

test('marks a field that is wrong and sends nothing', async ({ page }) => {
  const { row, cell } = rowWithRoom(await boardOf(page));
  let sent = 0;
  page.on('request', (request) => {
    if (request.method() === 'POST') sent++;
  });
  await page.goto(`/board?cell=${cellAddress(row, cell.week)}`);
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('textbox', { name: /^Trays/ }).fill('two');
  await dialog.getByRole('button', { name: 'Promise', exact: true }).click();

  await expect(dialog.getByText('Who is it for?')).toBeVisible();
  await expect(dialog.getByText('A whole number of trays, 1 or more.')).toBeVisible();
  await expect(dialog.getByRole('textbox', { name: /^Trays/ })).toHaveValue('two');
  expect(sent).toBe(0);
});

test('gives the shown rows as CSV', async ({ page }) => {
  const { rows } = await boardOf(page);
  await openBoard(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'CSV', exact: true }).click(),
  ]);
  const text = await (
    await download.createReadStream()
  )
    .toArray()
    .then((parts) => Buffer.concat(parts).toString('utf8'));

  expect(download.suggestedFilename()).toMatch(/^rootcast-board-\d{4}-W\d\d\.csv$/);
  const lines = text.trimEnd().split('\r\n');
  expect(lines.slice(rows.length + 1)).toEqual(['', expect.stringContaining('do not add up')]);

  // The sheet on paper names the business and the plants in a tray, and says the same of its weeks.
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  const sheet = page.locator('.paper');
  await expect(sheet.getByRole('heading', { level: 1 })).toContainText('Rootcast Demo Nursery');
  await expect(sheet.getByRole('columnheader', { name: 'Plants per tray' })).toBeVisible();
  await expect(sheet).toContainText('do not add up');
});

test('is accessible by day and by night, with a cell open too', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const { row, cell } = rowWithRoom(await boardOf(page));
  await openBoard(page);
  await expectAccessibleByDayAndNight(page);

  await page.goto(`/board?cell=${cellAddress(row, cell.week)}`);
  await expect(page.getByRole('dialog').getByText('Batches behind it')).toBeVisible();
  await expectAccessibleByDayAndNight(page);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('is a list of items with their next weeks', async ({ page }) => {
    const { row } = rowWithRoom(await boardOf(page));
    await page.goto(`/board?text=${encodeURIComponent(`${row.variety} ${row.trayFormat} ${row.site}`)}`);

    await expect(page.getByRole('grid')).toHaveCount(0);
    await expect(page.getByRole('link', { name: row.varietyName }).first()).toBeVisible();
    const weeks = page.getByRole('button', { name: /^Week \d+, .*[1-9]\d* open/ });
    await expect(weeks.first()).toBeVisible();
    const wider = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
    expect(wider).toBe(false);
    await expectAccessible(page);

    await weeks.first().click();
    await expect(openCell(page)).toBeVisible();
    await expectAccessible(page);
  });
});
