import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import type { BatchList, EntryView, Site } from '../src/shared/api-types';
import type { HouseOnTheWalk, RoundItem } from '../src/shared/climate-types';
import { expectAccessible } from './accessible';
import { unfoldHouses } from './unfold';

/** The daily round on a phone, against the demo. What is closed here is opened again, so that other stories find it. */

async function phone(browser: Browser, language: 'en' | 'es' = 'en'): Promise<{ page: Page; context: BrowserContext }> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
  });
  await context.addInitScript(
    (chosen) => localStorage.setItem('rootcast.preferences', JSON.stringify({ language: chosen })),
    language,
  );
  return { context, page: await context.newPage() };
}

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

const isOpen = ({ state }: RoundItem) => state === 'due' || state === 'carried-over';

/** The site with the longest round. */
async function aBusySite(page: Page): Promise<{ site: Site; items: readonly RoundItem[] }> {
  const sites = await get<readonly Site[]>(page, '/api/sites');
  const rounds = await Promise.all(
    sites.map(async (site) => ({
      site,
      items: await get<readonly RoundItem[]>(page, `/api/rounds?site=${site.code}`),
    })),
  );
  const [busiest] = rounds.sort((a, b) => b.items.filter(isOpen).length - a.items.filter(isOpen).length);
  if (!busiest || !busiest.items.some(isOpen)) throw new Error('nothing is due at any site of the demo');
  return busiest;
}

test('lists what is due house by house, and says how far the round is', async ({ browser }) => {
  const { page, context } = await phone(browser);
  const { site, items } = await aBusySite(page);
  await page.goto(`/rounds?site=${site.code}`);
  const closed = items.filter(({ state }) => state === 'done' || state === 'skipped').length;
  await expect(page.getByText(`${closed} of ${items.length} done`)).toBeVisible();
  await unfoldHouses(page);
  await expect(page.locator('.round-item')).toHaveCount(items.length - closed);
  await expectAccessible(page);
  await context.close();
});

test('a look done on the round is an entry of its batch, and its undo takes it back', async ({ browser }) => {
  const { page, context } = await phone(browser);
  const sites = await get<readonly Site[]>(page, '/api/sites');
  const all = await Promise.all(sites.map((site) => get<readonly RoundItem[]>(page, `/api/rounds?site=${site.code}`)));
  const item = all.flat().find((each) => isOpen(each) && each.asks.includes('cells'));
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const site = batches.find(({ id }) => id === item?.batch)?.site;
  if (!item || !site) throw new Error('no look is due in the demo');

  await page.goto(`/rounds?site=${site}&house=${item.house}`);
  const check = page
    .locator('.round-stop')
    .filter({ hasText: item.batch ?? '' })
    .locator('.round-item')
    .filter({ hasText: /Look|whether/ });
  await check.getByRole('button', { name: /^Done/ }).first().tap();
  await check.getByRole('button', { name: 'Record' }).tap();
  await expect(check.getByText('This is asked for.').first()).toBeVisible();
  await check.getByRole('textbox', { name: 'Cells looked at' }).tap();
  for (const digit of '50') await check.locator('.keypad').getByRole('button', { name: digit, exact: true }).tap();
  await check.getByRole('button', { name: 'None yet' }).tap();
  await check.getByRole('button', { name: 'Record' }).tap();
  const newest = async () => {
    const entries = await get<readonly EntryView[]>(page, `/api/batches/${item.batch}/entries`);
    return [...entries].sort((a, b) => a.position - b.position).at(-1);
  };
  await expect.poll(async () => (await newest())?.kind).toBe('look');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().tap();
  await expect.poll(async () => (await newest())?.kind).toBe('reversal');
  await context.close();
});

test('what is skipped needs a reason and stands among the closed', async ({ browser }) => {
  const { page, context } = await phone(browser);
  const { site, items } = await aBusySite(page);
  const item = items.find(isOpen) as RoundItem;
  await page.goto(`/rounds?site=${site.code}&house=${item.house}`);
  const open = page.locator('.round-item');
  await expect(open.first()).toBeVisible();
  const before = await open.count();
  await open.first().getByRole('button', { name: /^Skip/ }).tap();
  await expect(page.getByRole('button', { name: 'Skip it' })).toBeDisabled();
  await page.getByRole('button', { name: 'No time today' }).tap();
  await page.getByRole('button', { name: 'Skip it' }).tap();
  await expect(open).toHaveCount(before - 1);
  await page.getByRole('button', { name: 'Undo', exact: true }).first().tap();
  await expect(open).toHaveCount(before);
  await context.close();
});

test('what the server does not get is said on every screen, and arrives once when it can', async ({ browser }) => {
  const { page, context } = await phone(browser);
  const { site, items } = await aBusySite(page);
  const item = items.find(isOpen) as RoundItem;
  const stateNow = async () =>
    (await get<readonly RoundItem[]>(page, `/api/rounds?site=${site.code}`)).find(({ id }) => id === item.id)?.state;
  await page.route('**/api/rounds/*/skipped', (route) => route.abort());
  await page.goto(`/rounds?site=${site.code}&house=${item.house}`);
  const check = page.locator('.round-item').first();
  await check.getByRole('button', { name: /^Skip/ }).tap();
  await page.getByRole('button', { name: 'No time today' }).tap();
  await page.getByRole('button', { name: 'Skip it' }).tap();
  await expect(page.getByText(/1 not yet sent/)).toBeVisible();

  await page.goto('/board');
  await expect(page.getByText(/1 not yet sent/)).toBeVisible();
  await expectAccessible(page);
  await page.unroute('**/api/rounds/*/skipped');
  await page.getByRole('button', { name: 'Send now' }).tap();
  await expect(page.getByText(/not yet sent/)).toBeHidden();
  await expect.poll(stateNow).toBe('skipped');

  await page.goto(`/rounds?site=${site.code}&house=${item.house}`);
  await page.locator('.round-closed summary').first().tap();
  const skipped = page.locator('.round-closed li').filter({ hasText: 'skipped' });
  await skipped.getByRole('button', { name: /^Undo/ }).first().tap();
  await expect.poll(stateNow).not.toBe('skipped');
  await context.close();
});

test('where no house suits a batch, what would have to give way is said, with where to change it', async ({ page }) => {
  const { site, items } = await aBusySite(page);
  const item = items.find((each) => isOpen(each) && each.batch !== null);
  if (!item) throw new Error('nothing is due of a batch');
  const span = (least: number, most: number) => ({ least, most, mist: [] });
  await page.route(`**/api/rounds/houses?*`, async (route) => {
    const answer = await route.fetch();
    const houses = (await answer.json()) as HouseOnTheWalk[];
    const gaps = [{ quantity: 'medium-temperature', asks: span(25, 27), suits: span(18, 22) }];
    const stuck = { batch: item.batch, crop: 'petunia', fits: [], later: [], nearest: { house: item.house, gaps } };
    const clash = { quantity: 'medium-temperature', ...span(18, 22), stay: [], move: [stuck] };
    await route.fulfill({
      json: houses.map((each) => (each.house === item.house ? { ...each, clashes: [clash] } : each)),
    });
  });
  await page.goto(`/rounds?site=${site.code}&house=${item.house}`);
  await expect(page.getByText(`${item.batch} stays: no other open house suits it.`)).toContainText(
    /it asks for 25\.0.* 27\.0 °C, the others for 18\.0.* 22\.0 °C/,
  );
  await expect(page.getByRole('link', { name: 'Recipe of Petunia' })).toHaveAttribute(
    'href',
    /\/setup\/crops\/petunia\/recipe/,
  );
});

test('speaks Spanish', async ({ browser }) => {
  const { page, context } = await phone(browser, 'es');
  const { site } = await aBusySite(page);
  await page.goto(`/rounds?site=${site.code}`);
  await expect(page.getByRole('button', { name: /^Hecho/ }).first()).toBeVisible();
  await context.close();
});

test('what one filters by stands on one line', async ({ page }) => {
  const { site } = await aBusySite(page);
  await page.goto(`/rounds?site=${site.code}`);
  const head = page.locator('.round-head');
  const boxes = await Promise.all(
    [
      head.locator('vaadin-date-picker').locator('[part~=input-field]'),
      head.getByRole('combobox', { name: 'House' }),
      head.getByRole('button', { name: 'Print the round' }),
    ].map((each) => each.boundingBox()),
  );
  const [day, house, print] = boxes.map((box) => ({ middle: (box?.y ?? 0) + (box?.height ?? 0) / 2 }));
  expect(Math.abs((day?.middle ?? 0) - (house?.middle ?? 99))).toBeLessThan(2);
  expect(Math.abs((print?.middle ?? 0) - (house?.middle ?? 99))).toBeLessThan(2);
});

test('prints as a list to tick', async ({ page }) => {
  const { site } = await aBusySite(page);
  await page.goto(`/rounds?site=${site.code}`);
  await expect(page.locator('.round-item').first()).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.round-box').first()).toBeVisible();
  await expect(page.getByText(/^Rootcast Demo Nursery · /)).toBeVisible();
  await expect(page.locator('.round-answers').first()).toBeHidden();
  await expect(page.locator('header.top .connection')).toBeHidden();
  // Whose it is and why are no larger than what is to be done.
  const sizes = await page
    .locator('.round-stop')
    .filter({ has: page.locator('.round-where') })
    .first()
    .evaluate((stop) =>
      ['.round-task', '.round-where', '.round-where small', '.round-why'].map((each) => {
        const found = stop.querySelector(each);
        return found ? parseFloat(getComputedStyle(found).fontSize) : 0;
      }),
    );
  expect(Math.max(...sizes)).toBe(sizes[0]);
});
