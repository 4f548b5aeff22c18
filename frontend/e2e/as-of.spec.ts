import { expect, test, type Page } from '@playwright/test';
import type { BatchList, BatchView, BoardBody } from '../src/shared/api-types';
import { expectAccessible } from './accessible';

/** Seeing the board and a batch as they were, against the demo. */

const DAY_MS = 86_400_000;

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

/** Three days ago, to the minute, as the address writes it. */
function threeDaysAgo(): string {
  return `${new Date(Date.now() - 3 * DAY_MS).toISOString().slice(0, 16)}Z`;
}

async function anOldBatch(page: Page): Promise<BatchView> {
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const found = batches.find(({ stuckAt }) => Date.parse(stuckAt) < Date.now() - 5 * DAY_MS);
  if (!found) throw new Error('the demo has no live batch older than five days');
  return found;
}

test('a batch as it was says so, cannot be written to, and leads back to now', async ({ page }) => {
  const { id } = await anOldBatch(page);
  const asOf = threeDaysAgo();
  const then = await get<BatchView>(page, `/api/batches/${id}?asOf=${asOf}`);
  await page.goto(`/batches/${id}?asOf=${encodeURIComponent(asOf)}`);
  await expect(page.getByText(/^↶ As it was on/)).toBeVisible();
  await expect(page.locator('.head-figures a').first()).toHaveText(
    new Intl.NumberFormat('en-GB').format(then.plants.alive),
  );
  await expect(page.getByRole('button', { name: 'Count', exact: true })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveCount(0);
  // What is of now has stepped back, here as on the board.
  await expect(page.locator('.bell')).toBeHidden();
  await expect(page.locator('.connection-text')).toBeHidden();
  await page.getByRole('button', { name: 'What changed since' }).click();
  await expect(page).toHaveURL(/since=yes/);
  const since = page.getByRole('region', { name: 'What changed since' });
  await expect(since.getByRole('listitem').or(since.getByText('Nothing changed since.')).first()).toBeVisible();
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Back to now' }).click();
  await expect(page).not.toHaveURL(/asOf/);
  await expect(page.getByRole('button', { name: 'Count', exact: true })).toBeVisible();
});

test('the board is asked for a moment by its control, and keeps it in the address', async ({ page }) => {
  await page.goto('/board');
  await page.getByRole('button', { name: 'See it as of …' }).click();
  const day = new Date(Date.now() - 3 * DAY_MS).toISOString().slice(0, 10);
  await page.getByRole('combobox', { name: 'Day' }).fill(day);
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'At', exact: true }).fill('12:00');
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page).toHaveURL(/asOf=/);
  await expect(page.getByText(/^↶ As it was on/)).toBeVisible();
  await page.reload();
  await expect(page.getByText(/^↶ As it was on/)).toBeVisible();
  // What is of now has stepped back.
  await expect(page.locator('.bell')).toBeHidden();
  await expect(page.locator('.connection-text')).toBeHidden();
  await page.getByRole('button', { name: 'What changed since' }).click();
  await expect(page.getByRole('region', { name: 'What changed since' }).getByRole('row').nth(1)).toBeVisible();
  await expectAccessible(page);
});

test('nothing can be promised on a board of the past', async ({ page }) => {
  const asOf = threeDaysAgo();
  const { rows } = await get<BoardBody>(page, `/api/board?weeks=8&asOf=${asOf}`);
  const row = rows.find(({ cells }) => cells.some(({ ready }) => ready > 0));
  const cell = row?.cells.find(({ ready }) => ready > 0);
  if (!row || !cell) throw new Error('three days ago nothing was ready in any week');
  const key = [row.variety, row.trayFormat, row.site, cell.week].join('~');
  await page.goto(`/board?asOf=${encodeURIComponent(asOf)}&cell=${encodeURIComponent(key)}`);
  const dialog = page.getByRole('dialog');
  await expect(dialog.locator('.cell-figures')).toContainText(new Intl.NumberFormat('en-GB').format(cell.ready));
  await expect(dialog.getByRole('textbox')).toHaveCount(0);
});

test('a moment to come is marked beside the field', async ({ page }) => {
  await page.goto('/board');
  await page.getByRole('button', { name: 'See it as of …' }).click();
  await page.getByRole('combobox', { name: 'Day' }).fill(new Date(Date.now() + 3 * DAY_MS).toISOString().slice(0, 10));
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  // Beside the field; it is also read out for a moment.
  await expect(page.getByRole('dialog').getByText('That is still to come.')).toBeVisible();
});
