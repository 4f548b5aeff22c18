import { expect, test, type Page } from '@playwright/test';
import type { BatchList, House } from '../src/shared/api-types';
import type { RoundItem, TreatmentView, WarningView } from '../src/shared/climate-types';
import { expectAccessible } from './accessible';

/** Warnings, the record of treatments and the feed helper, against the demo. */

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

test('the bell leads to the warnings, and one that was seen stays until its cause has gone', async ({ page }) => {
  await page.goto('/board');
  await page
    .getByRole('link', { name: /warning/ })
    .first()
    .click();
  await expect(page).toHaveURL(/\/warnings/);
  const warnings = await get<readonly WarningView[]>(page, '/api/warnings');
  const lasting = warnings.filter(({ state }) => state === 'lasting');
  if (warnings.every(({ state }) => state === 'ended')) {
    await expect(page.getByText('No warnings')).toBeVisible();
  } else {
    await expect(page.locator('.warning')).toHaveCount(warnings.filter(({ state }) => state !== 'ended').length);
  }
  await expectAccessible(page);
  const [first] = lasting;
  if (first) {
    const item = page.locator('.warning.lasting').first();
    await item.getByRole('button', { expanded: false }).first().click();
    await expect(item.getByRole('heading', { name: 'What to do' })).toBeVisible();
    await expect(item.getByRole('region', { name: 'What it rests on' })).toBeVisible();
    await expectAccessible(page);
    await item.getByRole('textbox', { name: /^What is being done/ }).fill('looked at in the browser');
    await item.getByRole('button', { name: /^I have seen it/ }).click();
    await expect(page.getByText('looked at in the browser')).toBeVisible();
    const after = await get<readonly WarningView[]>(page, '/api/warnings');
    expect(after.some(({ acknowledgement }) => acknowledgement === 'looked at in the browser')).toBe(true);
  }
  await page.getByLabel('Show').selectOption('all');
  await expect(page).toHaveURL(/scope=all/);
});

test('scouting that is done from its warning is not overdue a moment later', async ({ page }) => {
  const overdue = async () =>
    (await get<readonly WarningView[]>(page, '/api/warnings')).filter(
      ({ kind, state }) => kind === 'scouting-missed' && state !== 'ended',
    );
  const [warning] = await overdue();
  if (!warning) throw new Error('no scouting is overdue in the demo');
  await page.goto(`/warnings?house=${encodeURIComponent(warning.house)}`);
  const item = page.locator('.warning').filter({ hasText: 'Scouting is overdue' });
  await item.getByRole('button', { expanded: false }).first().click();
  await item.getByRole('button', { name: /^Done, / }).click();
  await item.getByRole('button', { name: 'Nothing found' }).click();
  await item.getByRole('button', { name: 'Record', exact: true }).click();
  await expect(item).toHaveCount(0);
  expect((await overdue()).some(({ id }) => id === warning.id)).toBe(false);
});

test('a treatment closes its house until the interval ends, blocks the round in it, and can be taken back', async ({
  page,
}) => {
  const houses = await get<readonly House[]>(page, '/api/houses');
  const warned = (await get<readonly WarningView[]>(page, '/api/warnings')).find(({ state }) => state === 'lasting');
  const house = houses.find(({ code }) => code === warned?.house) ?? houses[0];
  if (!house) throw new Error('the demo has no house');
  await page.goto('/treatments');
  await page.getByRole('button', { name: 'Record a treatment' }).click();
  const dialog = page.getByRole('dialog', { name: 'What was applied' });
  await dialog.getByRole('button', { name: 'Record', exact: true }).click();
  await expect(dialog.getByText('Choose one.')).toBeVisible();
  await expectAccessible(page);

  await dialog.getByRole('combobox', { name: 'House' }).fill(house.name);
  await page.keyboard.press('Enter');
  await dialog.getByRole('textbox', { name: 'Product' }).fill('as on the container');
  await dialog.getByRole('textbox', { name: 'Rate' }).fill('as on the label');
  await dialog.getByRole('textbox', { name: 'Applied by' }).fill('A. Grower');
  await dialog.getByText('What local rules ask for besides').click();
  await dialog.getByRole('textbox', { name: /^Target/ }).fill('botrytis');
  await dialog.getByRole('textbox', { name: /^Re-entry interval/ }).fill('4');
  await dialog.getByRole('button', { name: 'Record', exact: true }).click();
  await expect(page.getByText(`${house.name}: do not go in before`)).toBeVisible();

  const items = await get<readonly RoundItem[]>(page, `/api/rounds?site=${house.site}`);
  const inside = items.filter((item) => item.house === house.code && item.state !== 'done' && item.state !== 'skipped');
  expect(inside.every(({ state }) => state === 'blocked')).toBe(true);
  await page.goto(`/climate/${encodeURIComponent(house.code)}`);
  await expect(page.getByText(/^✕ Closed until .* after as on the container: do not go in\.$/)).toBeVisible();

  // Every list of houses to move to, the batches of the house and its warnings say so too.
  const { batches } = await get<BatchList>(page, `/api/batches?state=live&site=${house.site}`);
  const [outside, within] = [false, true].map((there) => batches.find((each) => (each.house === house.code) === there));
  const closed = /closed until \d+ \w+, \d\d:\d\d \(as on the container\)/i;
  if (outside) {
    await page.goto(`/floor?site=${house.site}&batch=${outside.id}&do=move`);
    const choice = page.getByRole('button', { name: new RegExp(`^${house.name}`) });
    await expect(choice).toContainText(closed);
    await expect(choice).toBeDisabled();
  }
  if (within) {
    await page.goto(`/floor?site=${house.site}&batch=${within.id}`);
    await expect(page.getByText(/Closed until .* after as on the container: do not go in\./)).toBeVisible();
  }
  if (warned) {
    await page.goto('/warnings');
    await expect(page.getByRole('region', { name: house.name })).toContainText(/Closed until .*: do not go in/);
  }

  // The record of a house and a month, on paper too.
  await page.goto(`/treatments?house=${encodeURIComponent(house.code)}`);
  await page.getByLabel('Month').selectOption({ index: 1 });
  await page.emulateMedia({ media: 'print' });
  const record = page.getByRole('table', { name: new RegExp(`^Treatments, ${house.name}, `) });
  await expect(record.getByRole('row', { name: /as on the container/ })).toContainText('botrytis');
  await page.emulateMedia({ media: 'screen' });
  await page.goto('/treatments');

  await page
    .getByRole('button', { name: /^Take back/ })
    .first()
    .click();
  await page.getByRole('textbox', { name: 'Why?' }).fill('entered in a browser test');
  await page.getByRole('button', { name: 'Yes, take it back' }).click();
  await expect(page.getByText('No house is closed.')).toBeVisible();
  const [newest] = await get<readonly TreatmentView[]>(page, '/api/treatments');
  expect(newest?.reversalReason).toBe('entered in a browser test');
});

test('the feed helper weighs in by the table', async ({ page }) => {
  await page.goto('/feed');
  // 100 ppm of a fertilizer with 20 % nitrogen through 1:100 needs 50 g to the litre of stock.
  for (const [name, value] of [
    ['Fertilizer, N-P-K or N in %', '20-10-20'],
    ['Nitrogen wanted, ppm', '100'],
    ['Injector 1 :', '100'],
    ['Stock tank', '30'],
  ] as const) {
    await page.getByRole('textbox', { name }).fill(value);
  }
  await page.getByRole('button', { name: 'Compute' }).click();
  const answer = page.getByRole('status', { name: 'Answer' }).or(page.locator('.feed-answer'));
  await expect(answer.first()).toContainText('1.50 kg');
  await expect(answer.first()).toContainText('3,000 L');
  await expectAccessible(page);
  await page.getByRole('link', { name: 'How strong it is' }).click();
  await expect(page.getByRole('textbox', { name: 'Stock tank' })).toHaveValue('30');
});

test('the feed helper says beside the field what cannot be meant', async ({ page }) => {
  await page.goto('/feed');
  for (const [name, value] of [
    ['Fertilizer, N-P-K or N in %', '0'],
    ['Nitrogen wanted, ppm', '100'],
    ['Injector 1 :', '100'],
    ['Stock tank', '30'],
  ] as const) {
    await page.getByRole('textbox', { name }).fill(value);
  }
  await page.getByRole('button', { name: 'Compute' }).click();
  await expect(page.locator('[error-message], vaadin-text-field[invalid]').first()).toBeVisible();
});

for (const path of ['/warnings?scope=all', '/treatments', '/feed?of=dilution']) {
  test(`${path} passes the accessibility rules in the dark and fits a phone`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(path);
    await expect(page.getByRole('heading', { level: 1 })).not.toBeEmpty();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await expectAccessible(page);
  });
}
