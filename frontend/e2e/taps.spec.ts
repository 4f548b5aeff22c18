import { expect, test, type Browser, type Page } from '@playwright/test';
import type { BatchList, House } from '../src/shared/api-types';
import type { RoundItem } from '../src/shared/climate-types';

/** How many touches the work of every day takes, counted as the phone hears them; keys of its keyboard count as well. */

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

async function phone(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
  });
  await context.addInitScript(() => {
    const count = () => sessionStorage.setItem('touches', String(1 + Number(sessionStorage.getItem('touches'))));
    addEventListener('pointerup', (event) => event.isTrusted && count(), true);
    addEventListener('keydown', (event) => event.isTrusted && count(), true);
  });
  return context.newPage();
}

const touches = (page: Page) => page.evaluate(() => Number(sessionStorage.getItem('touches')));

async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.evaluate(() => sessionStorage.setItem('touches', '0'));
}

/**
 * Seconds of a hand that does not know the keyboard for one touch, and of a head that has to think before it: Card, Moran & Newell
 * 1980, The keystroke-level model, CACM 23:396-410 (from memory): K of an unfamiliar keyboard 1.20 s, M 1.35 s.
 */
const HAND_S = 1.2 + 1.35;

async function expectSent(page: Page): Promise<void> {
  await expect(page.getByText(/not yet sent/)).toHaveCount(0);
}

test('a house is read by hand in at most 20 touches, typing counted, and in a minute', async ({ browser }) => {
  const page = await phone(browser);
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const houses = await get<readonly House[]>(page, '/api/houses');
  const house = houses.find(({ code }) => code === batches[0]?.house);
  await open(page, `/floor?site=${house?.site}`);
  const began = Date.now();
  await page.getByRole('button', { name: 'Read by hand' }).tap();
  await page.getByRole('button', { name: house?.name, exact: true }).tap();
  for (const [label, shows] of [
    [/^Air/, '21.5'],
    [/^Medium/, '22.5'],
    [/^Humidity/, '85'],
  ] as const) {
    const field = page.getByRole('textbox', { name: label });
    await field.tap();
    await field.pressSequentially(shows);
  }
  await page.getByRole('button', { name: /^3: / }).tap();
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.locator('.notice')).toContainText('4 readings recorded');
  await expectSent(page);
  const taken = await touches(page);
  const screenS = (Date.now() - began) / 1000;
  const inAllS = screenS + taken * HAND_S;
  console.log(
    `four readings of a house by hand: ${taken} touches, ${screenS.toFixed(1)} s of the screen, ${inAllS.toFixed(0)} s with a slow hand`,
  );
  expect(taken).toBeLessThanOrEqual(20);
  expect(inAllS).toBeLessThanOrEqual(60);

  // The form stays open for the next house, and what was recorded is told where no button that records is.
  const told = await page.locator('.notice').boundingBox();
  const record = await page.getByRole('button', { name: 'Record' }).boundingBox();
  if (!told || !record) throw new Error('the notice or the button to record is not there');
  expect(told.y + told.height).toBeLessThan(record.y);
  await page.context().close();
});

/** What is pressed and done; the others ask for what was seen, and their touches are those of a count. */
const ASKS_NOTHING =
  /^Done, (Wean the mist|Mist off|Prevention is due|Begin toning|Look for draught|Wetting agent over the leaves)/;

/** Closes checks of a site's round until `wanted` are closed or none is left that asks for little; how many it closed. */
async function closeChecks(page: Page, wanted: number, left: () => Promise<number>): Promise<number> {
  const before = await left();
  const closed = async () => before - (await left());
  const shown = page.locator('.round-item');
  await expect(shown.first()).toBeVisible();
  // Whoever walks presses what is the same for a whole house first, then what is left there, and opens the next house.
  const together = page.locator('.round-alike-row').getByRole('button');
  const form = page.locator('.round-alike .round-form');
  const alone = page.getByRole('button', { name: ASKS_NOTHING });
  const folded = page.locator('.round-house > details:not([open]) > summary');
  for (;;) {
    while ((await together.count()) > 0 && (await closed()) < wanted) {
      const rows = await together.count();
      await together.first().tap();
      if (await form.count()) {
        await form.getByRole('button', { name: /^3: / }).tap();
        await form.getByRole('button', { name: 'Record' }).tap();
      }
      await expect(together).toHaveCount(rows - 1);
      await expectSent(page);
    }
    while ((await alone.count()) > 0 && (await closed()) < wanted) {
      const items = await shown.count();
      await alone.first().tap();
      await expect(shown).toHaveCount(items - 1);
      await expectSent(page);
    }
    if ((await folded.count()) === 0 || (await closed()) >= wanted) break;
    // A house that is opened draws its checks a moment later.
    const opened = await page.locator('.round-stops').count();
    await folded.first().tap();
    await expect(page.locator('.round-stops')).toHaveCount(opened + 1);
  }
  // On some days few ask for nothing: then the traps are read as well.
  const scout = page.getByRole('button', { name: /^Done, Scout/ });
  while ((await scout.count()) > 0 && (await closed()) < wanted) {
    const items = await scout.count();
    await scout.first().tap();
    await page.getByRole('button', { name: 'Nothing found' }).tap();
    await page.getByRole('button', { name: 'Record' }).tap();
    await expect(scout).toHaveCount(items - 1);
    await expectSent(page);
  }
  await expectSent(page);
  return closed();
}

test('ten checks of a round are closed in at most 25 touches', async ({ browser }) => {
  const page = await phone(browser);
  const sites = await get<readonly { code: string }[]>(page, '/api/sites');
  const leftOf = async (site: string) =>
    (await get<readonly RoundItem[]>(page, `/api/rounds?site=${site}`)).filter(
      ({ state }) => state === 'due' || state === 'carried-over',
    ).length;
  const rounds = await Promise.all(sites.map(async ({ code }) => ({ code, left: await leftOf(code) })));
  rounds.sort((a, b) => b.left - a.left);
  // Where one site has fewer than ten that ask for little, its people go on to the next site, which is a touch to choose.
  let closed = 0;
  let taken = 0;
  for (const { code, left } of rounds) {
    if (closed >= 10 || left === 0) break;
    await open(page, `/rounds?site=${code}`);
    taken += closed > 0 ? 1 : 0;
    closed += await closeChecks(page, 10 - closed, () => leftOf(code));
    taken += await touches(page);
  }
  console.log(`${closed} checks of a round: ${taken} touches`);
  expect(closed).toBeGreaterThanOrEqual(10);
  expect(taken / closed).toBeLessThanOrEqual(25 / 10);
  await page.context().close();
});

test('a count of one batch is done in at most 5 touches', async ({ browser }) => {
  const page = await phone(browser);
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const batch = batches.find(({ plants }) => plants.alive > 99 && plants.alive < 1_000);
  if (!batch) throw new Error('the demo has no batch of three figures');
  await open(page, `/floor?batch=${batch.id}`);
  await page.getByRole('button', { name: 'Count', exact: true }).tap();
  for (const digit of String(batch.plants.alive))
    await page.locator('.keypad').getByRole('button', { name: digit, exact: true }).tap();
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.getByText(`Count: ${batch.plants.alive} of`)).toBeVisible();
  await expectSent(page);
  const taken = await touches(page);
  console.log(`a count of three figures: ${taken} touches`);
  expect(taken).toBeLessThanOrEqual(5);
  await page.context().close();
});

test('reading a house by hand is three touches away from Floor, Rounds and Climate', async ({ browser }) => {
  const page = await phone(browser);
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const { site, house: code } = batches[0] ?? {};
  const name = (await get<readonly House[]>(page, '/api/houses')).find((house) => house.code === code)?.name;
  for (const [address, chosen] of [
    [`/floor?site=${site}`, false],
    [`/rounds?site=${site}`, true],
    [`/climate/${encodeURIComponent(code ?? '')}`, true],
  ] as const) {
    await open(page, address);
    // On the round the house with something to do is open, none when all is done; where one comes from a house it is chosen already.
    const readByHand = page.getByText('Read by hand', { exact: true }).first();
    const folded = page.locator('.round-house > details > summary').first();
    await expect(readByHand.or(folded).first()).toBeVisible();
    if (!(await readByHand.isVisible())) await folded.tap();
    await readByHand.tap();
    if (!chosen) await page.getByRole('button', { name, exact: true }).tap();
    await expect(page.getByRole('textbox', { name: /^Humidity/ }), address).toBeVisible();
    expect(await touches(page), address).toBeLessThanOrEqual(2);
  }
  // Each level in words and with its picture.
  const level = page.getByRole('button', { name: /^3: \S/ });
  await expect(level.locator('svg, img')).toBeVisible();
  await page.context().close();
});
