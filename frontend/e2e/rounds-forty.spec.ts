import { expect, test, type Locator, type Page } from '@playwright/test';
import type { EntryView, Variety } from '../src/shared/api-types';
import type { RoundItem } from '../src/shared/climate-types';
import { expectAccessible } from './accessible';

/** A whole round of a site with forty batches, on a phone, as one grower walks it. */

const SITE = 'FORTY';
const BATCHES = 40;
const HOUSES = 4;
const DAY_MS = 86_400_000;

async function post(page: Page, path: string, data: unknown): Promise<unknown> {
  const answer = await page.request.post(path, { data, headers: { 'Idempotency-Key': crypto.randomUUID() } });
  expect(answer.ok(), `${path}: ${await answer.text()}`).toBe(true);
  return answer.json();
}

const ago = (days: number) => new Date(Date.now() - days * DAY_MS).toISOString();

/** One batch stuck on each of the last forty days; those old enough are callused, then rooted. */
async function given(page: Page): Promise<void> {
  await post(page, '/api/sites', { code: SITE, name: 'Forty', timeZone: 'Etc/UTC', shipDay: 'MONDAY' });
  for (let i = 0; i < HOUSES; i++)
    await post(page, '/api/houses', { code: `${SITE}-${i}`, site: SITE, name: `House ${i}`, mediumSetpointC: 22 });
  const varieties = (await (await page.request.get('/api/varieties')).json()) as readonly Variety[];
  for (let day = 1; day <= BATCHES; day++) {
    const { id } = (await post(page, '/api/batches', {
      site: SITE,
      house: `${SITE}-${day % HOUSES}`,
      variety: varieties[day % varieties.length]?.code,
      trayFormat: 'T105',
      trays: 20,
      stuckAt: ago(day),
    })) as { id: string };
    if (day > 12) await post(page, `/api/batches/${id}/entries`, entry('CALLUS', day - 9));
    if (day > 24) await post(page, `/api/batches/${id}/entries`, entry('ROOT', day - 20));
  }
}

const entry = (stage: string, daysAgo: number) => ({
  kind: 'stage',
  stage,
  happenedAt: ago(daysAgo),
});

async function round(page: Page): Promise<readonly RoundItem[]> {
  return (await (await page.request.get(`/api/rounds?site=${SITE}`)).json()) as readonly RoundItem[];
}

/** Types an amount where a check asks for it. */
async function type(check: Locator, label: string, amount: string): Promise<void> {
  const field = check.getByRole('textbox', { name: label });
  if ((await field.count()) === 0) return;
  await field.tap();
  for (const digit of amount) await check.locator('.keypad').getByRole('button', { name: digit, exact: true }).tap();
}

/** Answers whatever the check asks, as one who sees a healthy crop that is not there yet. Says whether it was a look. */
async function answer(check: Locator): Promise<boolean> {
  await type(check, 'Cells looked at', '30');
  const noneYet = check.getByRole('button', { name: 'None yet' });
  const isLook = (await noneYet.count()) > 0;
  if (isLook) await noneYet.tap();
  await type(check, 'Plants alive', '1990');
  await type(check, 'Fungus gnats on the traps', '1');
  await type(check, 'Shore flies on the traps', '0');
  const level = check.getByRole('button', { name: 'Level 4' });
  if (await level.count()) await level.tap();
  await check.getByRole('button', { name: 'Record' }).tap();
  return isLook;
}

test('the round of a site with forty batches is walked to its end', async ({ browser }, info) => {
  test.setTimeout(300_000);
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
  });
  const page = await context.newPage();
  await given(page);
  const due = await round(page);
  const began = Date.now();
  await page.goto(`/rounds?site=${SITE}`);
  await expect(page.getByText(`0 of ${due.length} done`)).toBeVisible();
  await expect(page.locator('.round-item')).toHaveCount(due.length);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await expectAccessible(page);

  const counts = { done: 0, skipped: 0, undone: 0, looks: 0 };
  const items = page.locator('.round-item');
  for (let open = await items.count(); open > 0; open = await items.count()) {
    const check = items.first();
    // Nowhere here is another climate, so who clashes stays; and no round is quite finished in time.
    if ((await check.getByText('Move it').count()) > 0 || (counts.done + counts.skipped) % 10 === 9) {
      await check.getByRole('button', { name: /^Skip/ }).tap();
      await check.getByRole('button', { name: 'No time today' }).tap();
      await check.getByRole('button', { name: 'Skip it' }).tap();
      counts.skipped++;
    } else {
      await check.getByRole('button', { name: /^Done/ }).tap();
      if ((await check.locator('form').count()) && (await answer(check))) counts.looks++;
      counts.done++;
    }
    await expect(items).not.toHaveCount(open);
    if (counts.done === 1 && counts.undone === 0) {
      await page.getByRole('button', { name: 'Undo', exact: true }).first().tap();
      await expect(items).toHaveCount(open);
      counts.undone++;
      counts.done--;
    }
    expect(counts.done + counts.skipped, 'a round that does not end').toBeLessThan(due.length + BATCHES);
  }

  expect((await round(page)).every(({ state }) => state === 'done' || state === 'skipped')).toBe(true);
  await expect(page.getByText('Everything of this round is done.')).toBeVisible();
  await expectAccessible(page);
  const kinds = await Promise.all(
    due
      .filter(({ asks }) => asks.includes('cells'))
      .map(async ({ batch }) => {
        const entries = await page.request.get(`/api/batches/${batch}/entries`);
        return ((await entries.json()) as readonly EntryView[]).map(({ kind }) => kind);
      }),
  );
  expect(kinds.flat().filter((kind) => kind === 'look')).toHaveLength(counts.looks);
  const figures = `${due.length} checks of ${BATCHES} batches: ${JSON.stringify(counts)} in ${Math.round((Date.now() - began) / 1000)} s`;
  info.annotations.push({ type: 'round', description: figures });
  console.log(figures);
  await context.close();
});
