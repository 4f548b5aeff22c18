import { expect, test, type Browser, type Locator, type Page } from '@playwright/test';
import type { BatchView, EntryView, Variety } from '../src/shared/api-types';
import type { HouseOnTheWalk, RoundItem } from '../src/shared/climate-types';
import { expectAccessible } from './accessible';
import { unfoldHouses } from './unfold';

/** A whole round of a site with forty batches, on a phone, as one grower walks it. The site is this story's own. */

const SITE = 'RNDFORTY';
const BATCHES = 40;
const HOUSES = 5;
const TRAYS = 20;
const SKIP_EVERY = 12;
const DAY_MS = 86_400_000;
const WIDTH = 390;

const ago = (days: number) => new Date(Date.now() - days * DAY_MS).toISOString();
const today = (plus = 0) => ago(-plus).slice(0, 10);

async function send<T>(page: Page, path: string, data: unknown): Promise<T> {
  const answer = await page.request.post(path, { data, headers: { 'Idempotency-Key': crypto.randomUUID() } });
  expect(answer.ok(), `${path}: ${await answer.text()}`).toBe(true);
  return (await answer.json()) as T;
}

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

/** One batch stuck on each of the last forty days, neighbours in age in one house; each as far as its age allows. */
async function given(page: Page): Promise<void> {
  await send(page, '/api/sites', { code: SITE, name: 'Forty', timeZone: 'Etc/UTC', shipDay: 'MONDAY' });
  for (let i = 1; i <= HOUSES; i++)
    await send(page, '/api/houses', { code: `${SITE}-${i}`, site: SITE, name: `House ${i}`, mediumSetpointC: 22 });
  const varieties = await get<readonly Variety[]>(page, '/api/varieties');
  for (let day = 1; day <= BATCHES; day++) {
    const { id } = await send<BatchView>(page, '/api/batches', {
      site: SITE,
      house: `${SITE}-${Math.ceil((day * HOUSES) / BATCHES)}`,
      variety: varieties[day % varieties.length]?.code,
      trayFormat: 'T105',
      trays: TRAYS,
      stuckAt: ago(day),
    });
    const entry = (fields: object) => send(page, `/api/batches/${id}/entries`, fields);
    if (day > 12) await entry({ kind: 'stage', stage: 'CALLUS', happenedAt: ago(day - 10) });
    if (day > 24) await entry({ kind: 'stage', stage: 'ROOT', happenedAt: ago(day - 22) });
    if (day > 9 && day % 4 !== 0) await entry({ kind: 'count', plants: 2_000, happenedAt: ago(2) });
  }
}

const round = (page: Page, on = today()) => get<readonly RoundItem[]>(page, `/api/rounds?site=${SITE}&on=${on}`);
const isOpen = ({ state }: RoundItem) => state === 'due' || state === 'carried-over';

async function phone(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: WIDTH, height: 844 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
  });
  return context.newPage();
}

async function expectInWidth(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(WIDTH);
}

/** The amounts that a healthy crop gives that is not there yet. */
const AMOUNTS: Readonly<Record<string, string>> = {
  'Cells looked at': '30',
  'Plants alive': '1990',
  'Fungus gnats': '1',
  'Shore flies': '0',
};

/** Fills in what the open check asks for; false when it asks for a house and none suits. */
async function fillIn(check: Locator): Promise<boolean> {
  for (const [label, amount] of Object.entries(AMOUNTS)) {
    const field = check.getByRole('textbox', { name: label });
    if ((await field.count()) === 0) continue;
    await field.tap();
    for (const digit of amount) await check.locator('.keypad').getByRole('button', { name: digit, exact: true }).tap();
  }
  const noneYet = check.getByRole('button', { name: 'None yet' });
  if (await noneYet.count()) await noneYet.tap();
  const level = check.getByRole('button', { name: /^3: / });
  if (await level.count()) await level.tap();
  const fresh = check.getByRole('button', { name: 'fresh', exact: true });
  if (await fresh.count()) await fresh.tap();
  const conductivity = check.getByRole('textbox', { name: 'EC of the medium, mS/cm' });
  if (await conductivity.count()) await conductivity.fill('1.5');
  if ((await check.getByRole('group', { name: /^To house/ }).count()) === 0) return true;
  const suiting = check.getByRole('button', { name: /suits/ });
  if ((await suiting.count()) === 0) return false;
  await suiting.first().tap();
  return true;
}

/** What was pressed is with the server. */
async function expectSent(page: Page): Promise<void> {
  await expect(page.getByText('All sent')).toBeVisible({ timeout: 30_000 });
}

type Answer = 'done' | 'skipped';

/** Closes one check with the fewest touches and waits until it has left the list. */
async function close(first: Locator, wanted: Answer): Promise<Answer> {
  const element = await first.elementHandle({ timeout: 10_000 });
  // Found once and then by a mark: a dozen times over a hundred and fifty checks takes minutes.
  await element?.evaluate((found) => {
    document.querySelectorAll('[data-being-closed]').forEach((each) => each.removeAttribute('data-being-closed'));
    found.setAttribute('data-being-closed', '');
  });
  const check = first.page().locator('[data-being-closed]');
  let answer = wanted;
  if (answer === 'done') {
    await check.getByRole('button', { name: /^Done/ }).tap();
    if (await check.locator('.round-form').count()) {
      await check.locator('form').waitFor();
      if (await fillIn(check)) await check.getByRole('button', { name: 'Record' }).tap();
      else {
        await check.getByRole('button', { name: 'Back' }).tap();
        answer = 'skipped';
      }
    }
  }
  if (answer === 'skipped') {
    await check.getByRole('button', { name: /^Skip/ }).tap();
    await expect(check.getByRole('button', { name: 'Skip it' })).toBeDisabled();
    await check.getByRole('button', { name: 'No time today' }).tap();
    await check.getByRole('button', { name: 'Skip it' }).tap();
  }
  await element?.waitForElementState('hidden');
  return answer;
}

test('the round of a site with forty batches is walked to its end', async ({ browser }, info) => {
  test.setTimeout(1_200_000);
  const page = await phone(browser);
  await given(page);
  const due = await round(page);
  expect(new Set(due.flatMap(({ batch }) => batch ?? [])).size, 'batches with something to do').toBeGreaterThan(30);
  const counts = { done: 0, skipped: 0, undone: 0 };
  const open = page.locator('.round-item');

  await page.goto(`/rounds?site=${SITE}`);
  await expect(page.getByText(`0 of ${due.length} done`)).toBeVisible();
  await unfoldHouses(page);
  await expect(open).toHaveCount(due.length);
  await expectInWidth(page);
  await expectAccessible(page);

  await test.step('the houses are walked in the order the grower gives them', async () => {
    await page.getByText('Walking order').tap();
    await page.getByRole('button', { name: `House ${HOUSES}: earlier` }).tap();
    await expect(page.getByRole('region').nth(HOUSES - 2)).toHaveAccessibleName(`House ${HOUSES}`);
    await page.getByText('Walking order').tap();
    const walk = await get<readonly HouseOnTheWalk[]>(page, `/api/rounds/houses?site=${SITE}`);
    expect(walk.map(({ house }) => house)).toEqual([1, 2, 3, 5, 4].map((i) => `${SITE}-${i}`));
    await expect(page.locator('.round-house h2')).toContainText(walk.map(({ name }) => name));
  });

  const began = Date.now();
  await test.step('a look is an entry of its batch', async () => {
    const look = due.find(({ task }) => task === 'look-callus');
    const check = page
      .locator('.round-stop')
      .filter({ hasText: look?.batch ?? 'no look is due' })
      .locator('.round-item')
      .filter({ hasText: 'Look for callus' });
    await check.getByRole('button', { name: /^Done/ }).tap();
    await expectInWidth(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAccessible(page);
    await page.emulateMedia({ colorScheme: 'light' });
    await check.getByRole('button', { name: 'Back' }).tap();
    await close(check, 'done');
    counts.done++;
    await expectSent(page);
    const entries = await get<readonly EntryView[]>(page, `/api/batches/${look?.batch}/entries`);
    expect(entries).toContainEqual(expect.objectContaining({ kind: 'look', cells: 30, reached: 0 }));
  });

  await test.step('what was closed is taken back at once, or later from among the closed', async () => {
    const before = await open.count();
    await close(open.first(), 'done');
    await page.locator('.notice').getByRole('button', { name: 'Undo', exact: true }).tap();
    await expect(open).toHaveCount(before);
    await close(open.first(), 'skipped');
    await page.locator('.round-closed summary').first().tap();
    await page.locator('.round-closed li').filter({ hasText: 'skipped' }).getByRole('button', { name: /^Undo/ }).tap();
    await expect(open).toHaveCount(before);
    counts.undone += 2;
  });

  await test.step('one after the other, until one is left that is due today', async () => {
    const last = due.find(({ task, state }) => task === 'prevention' && state === 'due');
    const kept = page.getByRole('button', { name: `Done, Prevention is due, ${last?.batch}` });
    await expect(kept).toHaveCount(1);
    const others = page.locator(`.round-item:not(:has([aria-label="Done, Prevention is due, ${last?.batch}"]))`);
    while (await others.count()) {
      const wanted = (counts.done + counts.skipped) % SKIP_EVERY === SKIP_EVERY - 1 ? 'skipped' : 'done';
      counts[await close(others.first(), wanted)]++;
      expect(counts.done + counts.skipped, 'a round that does not end').toBeLessThan(due.length + BATCHES);
    }
  });
  const seconds = Math.round((Date.now() - began) / 1_000);

  await test.step('what is left today is carried over to tomorrow', async () => {
    await expectSent(page);
    const [left] = (await round(page)).filter(isOpen);
    expect(left?.state).toBe('due');
    await page.goto(`/rounds?site=${SITE}&on=${today(1)}`);
    await unfoldHouses(page);
    await expect(open.filter({ hasText: 'left over since' })).toHaveCount(1);
    await page.goto(`/rounds?site=${SITE}`);
    counts[await close(open, 'done')]++;
  });

  await expect(page.getByText('Everything of this round is done.')).toBeVisible();
  await expectSent(page);
  expect((await round(page)).filter(isOpen)).toEqual([]);
  await expectInWidth(page);
  await expectAccessible(page);
  const figures = `${due.length} checks due of ${BATCHES} batches in ${HOUSES} houses; closed ${JSON.stringify(counts)} in ${seconds} s`;
  info.annotations.push({ type: 'round', description: figures });
  console.log(figures);
  await page.context().close();
});
