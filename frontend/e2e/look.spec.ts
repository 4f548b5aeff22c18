import { expect, test, type Page } from '@playwright/test';
import type { BatchList, BatchView, Development, EntryView } from '../src/shared/api-types';
import type { Explanation } from '../src/shared/learning-types';
import { expectAccessible } from './accessible';

/** A look recorded and taken back, and the reasons of a date, against the demo. */

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

async function aRunningBatch(page: Page, stage = 'CALLUS'): Promise<BatchView> {
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const found = batches.find((batch) => batch.stage === stage && batch.outlook && batch.plants.alive > 100);
  if (!found) throw new Error(`the demo has no live batch in ${stage}`);
  return found;
}

test('a look on Floor moves the outlook, and its undo takes it out again', async ({ browser }) => {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
  });
  const page = await context.newPage();
  const batch = await aRunningBatch(page);
  const looksOf = async () =>
    (await get<Development>(page, `/api/batches/${batch.id}/development`)).looks?.length ?? NaN;
  const before = await looksOf();
  await page.goto(`/floor?site=${batch.site}&batch=${batch.id}`);
  await page.getByRole('button', { name: 'Look', exact: true }).tap();
  for (const digit of '50') await page.locator('.keypad').getByRole('button', { name: digit, exact: true }).tap();
  await page.getByRole('button', { name: 'None yet' }).tap();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.getByText('none of 50 cells yet: Rooted', { exact: true })).toBeVisible();
  await expect
    .poll(async () => (await get<readonly EntryView[]>(page, `/api/batches/${batch.id}/entries`)).at(-1))
    .toMatchObject({ kind: 'look', stage: 'ROOT', cells: 50, reached: 0 });

  await page
    .getByRole('button', { name: /^Undo: Look/ })
    .first()
    .tap();
  await page.getByRole('button', { name: 'Yes, undo it' }).tap();
  await expect(page.getByText('All sent')).toBeVisible();
  await expect.poll(looksOf).toBe(before);
  await context.close();
});

test('more reached than looked at is said beside the field and not sent', async ({ page }) => {
  const batch = await aRunningBatch(page);
  await page.goto(`/batches/${batch.id}`);
  await page.getByRole('button', { name: 'Look', exact: true }).click();
  await page.getByRole('textbox', { name: 'Cells looked at' }).fill('40');
  await page.getByRole('textbox', { name: 'Of them there' }).fill('41');
  await page.getByRole('button', { name: 'Record' }).click();
  await expect(page.getByText('More than were looked at.')).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Of them there' })).toHaveValue('41');
});

test('the reasons of a date add up to its distance from the plan', async ({ page }) => {
  const batch = await aRunningBatch(page);
  const explanation = await get<Explanation>(page, `/api/batches/${batch.id}/explanation`);
  const sum = explanation.parts.reduce((total, { days }) => total + days, 0);
  expect(Math.abs(sum - (explanation.differenceDays ?? NaN))).toBeLessThan(0.05);
  await page.goto(`/batches/${batch.id}`);
  const why = page.getByRole('region', { name: 'Why this date' });
  await expect(why.getByRole('row', { name: /^Planned/ })).toBeVisible();
  await expect(why.getByRole('row', { name: /^Expected/ })).toBeVisible();
  await page.getByRole('link', { name: 'Why this date?' }).click();
  await expect(page).toHaveURL(/#why$/);
});
