import { expect, test, type Page } from '@playwright/test';
import type { Variety } from '../src/shared/api-types';

/** From a reading to every screen that is open, on a site of its own that no simulator sends to. */

const SITE = 'LIVELY';
const TIMES = 5;
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

async function post(page: Page, path: string, data: unknown): Promise<void> {
  const answer = await page.request.post(path, { data });
  expect(answer.ok(), `${path}: ${await answer.text()}`).toBe(true);
}

const houseOf = (i: number) => `${SITE}-${i}`;

/** Houses with a batch each, ten days in the cell, of as many varieties: as many rows of the board. */
async function given(page: Page): Promise<readonly Variety[]> {
  await post(page, '/api/sites', { code: SITE, name: 'Lively', timeZone: 'Etc/UTC', shipDay: 'MONDAY' });
  const all = (await (await page.request.get('/api/varieties')).json()) as readonly Variety[];
  const varieties = all.slice(0, TIMES);
  for (const [i, variety] of varieties.entries()) {
    await post(page, '/api/houses', { code: houseOf(i), site: SITE, name: `Lively ${i}`, mediumSetpointC: 22 });
    await post(page, '/api/batches', {
      site: SITE,
      house: houseOf(i),
      variety: variety.code,
      trayFormat: 'T105',
      trays: 40,
      stuckAt: new Date(Date.now() - 10 * DAY_MS).toISOString(),
    });
  }
  return varieties;
}

const reading = (house: string, value: number, atMs: number) => ({
  house,
  quantity: 'medium-temperature',
  value,
  unit: 'Cel',
  at: new Date(atMs).toISOString(),
});

/** Of hours that have ended: enough to move every date of the house's batch. */
const coldDays = (house: string) =>
  Array.from({ length: 239 }, (_, back) => reading(house, 15, Date.now() - (back + 1) * HOUR_MS));

/** When, by the clock of this machine, the text of `selector` no longer is `before` and holds `wanted`. */
async function changedAt(page: Page, selector: string, before: string, wanted: string): Promise<number> {
  await page.waitForFunction(
    ([where, was, holds]) => {
      const text = document.querySelector(where)?.textContent ?? was;
      return text !== was && text.includes(holds);
    },
    [selector, before, wanted] as const,
    { polling: 20, timeout: 20_000 },
  );
  return Date.now();
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}

/** Sends, and gives the milliseconds until each of the screens shows it. */
async function sentUntil(
  page: Page,
  readings: readonly unknown[],
  shown: readonly Promise<number>[],
): Promise<number[]> {
  const sentAt = Date.now();
  await post(page, '/api/readings', readings);
  return (await Promise.all(shown)).map((at) => at - sentAt);
}

const textOf = async (page: Page, selector: string) => (await page.locator(selector).textContent()) ?? '';

test('a reading is on the open Climate, House and Board screens within a second', async ({ browser }, info) => {
  // Three people at three machines: one browser's tabs would share its six connections.
  const [overview, house, board] = [await browser.newPage(), await browser.newPage(), await browser.newPage()];
  const varieties = await given(overview);
  await overview.goto(`/climate?site=${SITE}`);
  await board.goto(`/board?site=${SITE}`);
  const took: Record<'overview' | 'house' | 'board', number[]> = { overview: [], house: [], board: [] };

  for (const [i, variety] of varieties.entries()) {
    await house.goto(`/climate/${houseOf(i)}`);
    await expect(house.locator('.climate-now')).toBeVisible();
    const row = `tbody tr:has(a[href*="${houseOf(i)}"])`;
    await expect(overview.locator(row)).toBeVisible();
    const now = [await textOf(overview, row), await textOf(house, '.climate-now')] as const;
    const wanted = `${16 + i}.3`;
    const [onOverview = NaN, onHouse = NaN] = await sentUntil(
      overview,
      [reading(houseOf(i), Number(wanted), Date.now() - 1_000)],
      [changedAt(overview, row, now[0], wanted), changedAt(house, '.climate-now', now[1], wanted)],
    );

    await board.locator('[role=row]', { hasText: variety.name }).evaluate((element) => {
      document.querySelectorAll('[data-watched]').forEach((each) => each.removeAttribute('data-watched'));
      element.setAttribute('data-watched', '');
    });
    const open = await textOf(board, '[data-watched]');
    const [onBoard = NaN] = await sentUntil(overview, coldDays(houseOf(i)), [
      changedAt(board, '[data-watched]', open, ''),
    ]);
    took.overview.push(onOverview);
    took.house.push(onHouse);
    took.board.push(onBoard);
  }

  const figures = JSON.stringify(took);
  info.annotations.push({ type: 'milliseconds from sending', description: figures });
  await Promise.all([overview.close(), house.close(), board.close()]);
  console.log(`milliseconds from sending to the screen: ${figures}`);
  for (const values of Object.values(took)) expect(median(values), figures).toBeLessThan(1_000);
});
