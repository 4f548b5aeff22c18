import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import type {
  BatchList,
  BatchView,
  BoardBody,
  BoardCell,
  BoardRow,
  CellExplanation,
  EntryView,
  Site,
} from '../src/shared/api-types';
import { expectAccessible } from './accessible';

/** The floor at phone size against the demo. What is recorded here is undone again, so that other stories find the demo. */

async function phone(
  browser: Browser,
  language: 'en' | 'es' | 'keep' = 'en',
): Promise<{ page: Page; context: BrowserContext }> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
  });
  // Set anew on every page that opens, unless the reader's own choice is what is tried.
  if (language !== 'keep') {
    await context.addInitScript(
      (chosen) => localStorage.setItem('rootcast.preferences', JSON.stringify({ language: chosen })),
      language,
    );
  }
  return { context, page: await context.newPage() };
}

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

const batchOf = (page: Page, id: string) => get<BatchView>(page, `/api/batches/${id}`);
const entriesOf = (page: Page, id: string) => get<readonly EntryView[]>(page, `/api/batches/${id}/entries`);

async function aLiveBatch(page: Page): Promise<BatchView> {
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const found = batches.find(({ plants, stage }) => plants.alive > 200 && stage !== 'READY');
  if (!found) throw new Error('the demo has no live batch of more than 200 plants');
  return found;
}

async function openOnFloor(page: Page, batch: BatchView): Promise<void> {
  await page.goto(`/floor?site=${batch.site}&batch=${batch.id}`);
  await expect(page.getByRole('heading', { name: batch.varietyName })).toBeVisible();
}

async function type(page: Page, amount: number): Promise<void> {
  const keypad = page.locator('.keypad');
  for (const digit of String(amount)) await keypad.getByRole('button', { name: digit, exact: true }).tap();
}

/** A moment as the wall clock of the batch's site shows it: day and time of day. */
async function clockOf(page: Page, { site }: BatchView, at: Date): Promise<[day: string, time: string]> {
  const timeZone = (await get<readonly Site[]>(page, '/api/sites')).find(({ code }) => code === site)?.timeZone;
  const day = new Intl.DateTimeFormat('en-CA', { timeZone, dateStyle: 'short' }).format(at);
  return [day, new Intl.DateTimeFormat('en-GB', { timeZone, timeStyle: 'short' }).format(at)];
}

async function undoNewest(page: Page): Promise<void> {
  await page
    .getByRole('button', { name: /^Undo: / })
    .first()
    .tap();
  await page.getByRole('button', { name: 'Yes, undo it' }).tap();
  await expect(page.getByText('All sent')).toBeVisible();
}

/** The lot that most of an open cell stands on: whatever it loses, the cell loses. */
async function cellWithLot(page: Page): Promise<{ row: BoardRow; cell: BoardCell; batch: string }> {
  const { rows } = await get<BoardBody>(page, '/api/board?weeks=12');
  for (const row of rows) {
    const cell = row.cells.find(({ open }) => open >= 4);
    if (!cell) continue;
    const query = new URLSearchParams({
      variety: row.variety,
      trayFormat: row.trayFormat,
      site: row.site,
      week: cell.week,
    });
    const { lots } = await get<CellExplanation>(page, `/api/board/cell?${query}`);
    const [lot] = [...lots].sort((a, b) => b.traysAtConfidence - a.traysAtConfidence);
    if (lot && lot.traysAtConfidence >= 2) return { row, cell, batch: lot.batch };
  }
  throw new Error('the demo has no open cell that stands on a lot');
}

test('a count on the floor changes the open board in another window within a second, and its undo changes it back', async ({
  page: board,
  browser,
}) => {
  const { row, cell, batch: id } = await cellWithLot(board);
  const before = await batchOf(board, id);
  await board.goto(`/board?weeks=12&text=${encodeURIComponent(`${row.variety} ${row.trayFormat} ${row.site}`)}`);
  const column = row.cells.findIndex(({ week }) => week === cell.week);
  const shown = board
    .getByRole('row')
    .filter({ hasText: row.varietyName })
    .first()
    .getByRole('gridcell')
    .nth(2 + column);
  await expect(shown).toHaveAccessibleName(/^\d/);
  const name = (await shown.getAttribute('aria-label')) ?? (await shown.innerText());
  await board.evaluate(() => Object.assign(window, { neverReloaded: true }));

  const { page: floor, context } = await phone(browser);
  await floor.goto(`/floor?site=${before.site}`);
  await floor.getByRole('textbox', { name: 'Scan or type a batch' }).fill(id);
  await floor.keyboard.press('Enter');
  await floor.getByRole('button', { name: 'Count', exact: true }).tap();
  await type(floor, Math.floor(before.plants.alive / 3));
  await floor.getByRole('button', { name: 'Record' }).tap();
  // Two thirds gone is hardly likely: asked once, with both figures, and nothing is written before the answer.
  await expect(floor.getByText('Is that right?')).toBeVisible();
  await expect(
    floor.getByText(`The books say ${new Intl.NumberFormat('en-GB').format(before.plants.alive)}`),
  ).toBeVisible();
  expect((await batchOf(board, id)).plants.alive).toBe(before.plants.alive);
  await floor.getByRole('button', { name: 'It is right' }).tap();

  await expect(shown).not.toHaveAccessibleName(name, { timeout: 1_000 });
  expect(await board.evaluate(() => 'neverReloaded' in window)).toBe(true);
  expect((await batchOf(board, id)).plants.alive).toBe(Math.floor(before.plants.alive / 3));
  await expect(floor.locator('.figure-main dd')).toHaveText(
    new Intl.NumberFormat('en-GB').format(Math.floor(before.plants.alive / 3)),
  );

  await undoNewest(floor);
  await expect.poll(async () => (await batchOf(board, id)).plants.alive).toBe(before.plants.alive);
  const entries = await entriesOf(board, id);
  const reversal = entries.find(
    ({ kind, reverses }) => kind === 'reversal' && entries.some((e) => e.id === reverses && e.kind === 'count'),
  );
  expect(reversal?.reason).toBe('Entered by mistake');
  await context.close();
});

test('a sample says what it would make of the batch before it is recorded, and the ledger makes just that of it', async ({
  browser,
}) => {
  const { page, context } = await phone(browser);
  const batch = await aLiveBatch(page);
  await openOnFloor(page, batch);
  await page.getByRole('button', { name: 'Count', exact: true }).tap();
  await page.getByRole('button', { name: 'A sample' }).tap();
  await type(page, 1);
  await page.getByRole('textbox', { name: 'Blanks among them' }).focus();
  await type(page, 5);
  const said = await page.locator('.would-be strong').innerText();
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.getByText('All sent')).toBeVisible();
  await expect.poll(async () => (await batchOf(page, batch.id)).lastCount?.sampledCells ?? null).not.toBeNull();
  const alive = (await batchOf(page, batch.id)).plants.alive;
  expect(said).toBe(`about ${new Intl.NumberFormat('en-GB').format(alive)} alive`);
  await undoNewest(page);
  await expect.poll(async () => (await batchOf(page, batch.id)).plants.alive).toBe(batch.plants.alive);
  await context.close();
});

test('without network an entry is kept and named as not yet sent; it arrives once when the network is back', async ({
  browser,
}) => {
  const { page, context } = await phone(browser);
  const batch = await aLiveBatch(page);
  await openOnFloor(page, batch);
  const before = (await entriesOf(page, batch.id)).length;
  await context.setOffline(true);
  await page.getByRole('button', { name: 'Loss', exact: true }).tap();
  await type(page, 3);
  await page.getByRole('button', { name: 'Botrytis' }).tap();
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.getByText(/^▲? ?1 not yet sent/)).toBeVisible();
  await expect(page.getByText('1 entry is not yet in these figures.')).toBeVisible();

  // A screen that was never opened here cannot come; one stays, with what one has begun to type.
  await page.getByRole('button', { name: 'Count', exact: true }).tap();
  await type(page, 12);
  await page.getByRole('button', { name: 'Menu' }).tap();
  await page.getByRole('link', { name: 'Feed' }).tap();
  await expect(page.locator('.notice')).toContainText('No connection, and this screen was not opened');
  await expect(page).toHaveURL(/\/floor/);
  await expect(page.locator('.amount input').first()).toHaveValue('12');
  await page.getByRole('button', { name: 'Back' }).tap();

  await context.setOffline(false);
  await expect(page.getByText('All sent')).toBeVisible({ timeout: 15_000 });
  expect(await entriesOf(page, batch.id)).toHaveLength(before + 1);
  await undoNewest(page);
  await context.close();
});

test('an entry whose answer was lost happens once', async ({ browser }) => {
  const { page, context } = await phone(browser);
  const batch = await aLiveBatch(page);
  await openOnFloor(page, batch);
  const before = (await entriesOf(page, batch.id)).length;
  let lost = 0;
  await page.route('**/api/batches/*/entries', async (route) => {
    if (route.request().method() !== 'POST' || lost > 0) return route.fallback();
    lost++;
    await route.fetch();
    await route.abort();
  });
  await page.getByRole('button', { name: 'Loss', exact: true }).tap();
  await type(page, 2);
  await page.getByRole('button', { name: 'Rot', exact: true }).tap();
  // It happened an hour ago, by the clock of the site.
  const anHourAgo = new Date(Math.floor(Date.now() / 60_000) * 60_000 - 3_600_000);
  const [day, time] = await clockOf(page, batch, anHourAgo);
  await page.getByRole('button', { name: 'Earlier' }).tap();
  await page.getByLabel('Day').fill(day);
  await page.getByLabel('Time', { exact: true }).fill(time);
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.getByText(/1 not yet sent/)).toBeVisible();
  await expect(page.getByText('All sent')).toBeVisible({ timeout: 15_000 });
  expect(lost).toBe(1);
  const after = await entriesOf(page, batch.id);
  expect(after).toHaveLength(before + 1);
  const loss = after.find(({ kind, plants }) => kind === 'loss' && plants === 2);
  expect(Date.parse(loss?.happenedAt ?? '')).toBe(anHourAgo.getTime());
  await undoNewest(page);
  await context.close();
});

test('a refusal is shown with its reason and stays until it is discarded', async ({ browser }) => {
  const { page, context } = await phone(browser);
  const batch = await aLiveBatch(page);
  await openOnFloor(page, batch);
  await page.getByRole('button', { name: 'Loss', exact: true }).tap();
  await type(page, batch.plants.alive + 1);
  await page.getByRole('button', { name: 'Rot', exact: true }).tap();
  await page.getByRole('button', { name: 'Record' }).tap();
  const refused = page.getByRole('region', { name: 'Not taken by the server' });
  await expect(refused).toContainText(new Intl.NumberFormat('en-GB').format(batch.plants.alive));
  await page.reload();
  await expect(refused).toBeVisible();
  await refused.getByRole('button', { name: 'Discard' }).tap();
  await refused.getByRole('button', { name: 'Discard' }).tap();
  await expect(refused).toBeHidden();
  expect((await batchOf(page, batch.id)).plants.alive).toBe(batch.plants.alive);
  await context.close();
});

test('speaks Spanish throughout, chosen on Floor itself', async ({ browser }) => {
  const { page, context } = await phone(browser, 'keep');
  const batch = await aLiveBatch(page);
  await page.goto(`/floor?site=${batch.site}`);
  await page.getByRole('button', { name: 'Menu' }).tap();
  const spanish = page.getByText('Español', { exact: true });
  await expect(spanish).toBeInViewport({ ratio: 1 });
  await spanish.tap();
  await page.goto(`/floor?site=${batch.site}`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Captura');
  await page.getByRole('textbox', { name: 'Escanee o escriba un lote' }).fill(batch.id);
  await page.keyboard.press('Enter');
  for (const action of ['Contar', 'Pérdida', 'Etapa alcanzada']) {
    await page.getByRole('button', { name: action, exact: true }).tap();
    await expect(page.getByRole('button', { name: 'Anotar' })).toBeVisible();
    await expectAccessible(page);
    expect(await page.locator('.floor').innerText()).not.toMatch(
      /\b(Count|Loss|Stage|Record|Back|Cause|Clear|alive|sent)\b/,
    );
    await page.getByRole('button', { name: '← Volver' }).tap();
  }
  await context.close();
});

test('passes the accessibility rules and has nothing to press smaller than 56 px', async ({ browser }) => {
  const { page, context } = await phone(browser);
  const batch = await aLiveBatch(page);
  await page.goto('/floor');
  await expect(page.locator('.floor')).toBeVisible();
  await expectAccessible(page);
  await page.goto(`/floor?site=${batch.site}`);
  await expect(page.locator('.found li').first()).toBeVisible();
  await expectAccessible(page);
  for (const action of ['', 'count', 'loss', 'stage', 'move']) {
    await page.goto(`/floor?site=${batch.site}&batch=${batch.id}${action && `&do=${action}`}`);
    await expect(page.locator(action ? '.record-bar' : '.last-entries li').first()).toBeVisible();
    // Whatever is entered may have happened earlier.
    await expect(page.getByRole('region', { name: 'When did it happen?' })).toHaveCount(action ? 1 : 0);
    await expectAccessible(page);
    const small = await page
      .locator('.floor button:visible, .floor a:visible')
      .evaluateAll(
        (all) =>
          all.map((each) => each.getBoundingClientRect()).filter(({ width, height }) => width < 56 || height < 56)
            .length,
      );
    expect(small, action).toBe(0);
  }
  await context.close();
});
