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

async function expectSent(page: Page): Promise<void> {
  await expect(page.getByText(/not yet sent/)).toHaveCount(0);
}

test('a house is read by hand in at most 20 touches, typing counted', async ({ browser }) => {
  const page = await phone(browser);
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const houses = await get<readonly House[]>(page, '/api/houses');
  const house = houses.find(({ code }) => code === batches[0]?.house);
  await open(page, `/floor?site=${house?.site}`);
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
  console.log(`four readings of a house by hand: ${taken} touches`);
  expect(taken).toBeLessThanOrEqual(20);
  await page.context().close();
});

test('ten checks of a round are closed in at most 25 touches', async ({ browser }) => {
  const page = await phone(browser);
  const sites = await get<readonly { code: string }[]>(page, '/api/sites');
  const rounds = await Promise.all(
    sites.map(async ({ code }) => ({
      code,
      due: (await get<readonly RoundItem[]>(page, `/api/rounds?site=${code}`)).filter(({ state }) => state === 'due'),
    })),
  );
  const fullest = rounds.sort((a, b) => b.due.length - a.due.length)[0];
  await open(page, `/rounds?site=${fullest?.code}`);
  const left = page.locator('.round-item');
  await expect(left.first()).toBeVisible();
  const before = await left.count();
  const closed = async () => before - (await left.count());
  // Whoever walks presses what is the same for a whole house first, then what asks for nothing.
  while ((await closed()) < 10) {
    const now = await left.count();
    const together = page.locator('.round-alike-row button').first();
    if (await together.count()) {
      await together.tap();
      const level = page.locator('.round-alike').getByRole('button', { name: /^3: / });
      if (await level.count()) {
        await level.tap();
        await page.locator('.round-alike').getByRole('button', { name: 'Record' }).tap();
      }
    } else {
      await left.first().getByRole('button', { name: /^Done/ }).tap();
    }
    await expect.poll(() => left.count()).toBeLessThan(now);
  }
  const taken = await touches(page);
  console.log(`${await closed()} checks of a round: ${taken} touches`);
  expect(taken).toBeLessThanOrEqual(25);
  await page.context().close();
});

test('a count of one batch is done in at most 5 touches', async ({ browser }) => {
  const page = await phone(browser);
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const batch = batches.find(({ plants }) => plants.alive > 200);
  await open(page, `/floor?batch=${batch?.id}`);
  await page.getByRole('button', { name: 'Count', exact: true }).tap();
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.locator('.notice')).toContainText('Count');
  await expectSent(page);
  const taken = await touches(page);
  console.log(`a count that is as the books say: ${taken} touches`);
  expect(taken).toBeLessThanOrEqual(5);
  await page.context().close();
});
