import { expect, test, type Page } from '@playwright/test';
import type { BatchList, House, Site } from '../src/shared/api-types';
import { expectAccessible } from './accessible';

/** A trial that changes nothing, against the demo. */

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

async function aHouseWithCuttings(page: Page): Promise<House> {
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const young = batches.find(({ stage, outlook }) => stage === 'STICK' && outlook);
  const house = (await get<readonly House[]>(page, '/api/houses')).find(({ code }) => code === young?.house);
  if (!house) throw new Error('the demo has no house with a batch that forms callus');
  return house;
}

test('a colder house moves ready dates, says that nothing is stored, and stores nothing', async ({ page }) => {
  const house = await aHouseWithCuttings(page);
  const before = await get<House>(page, `/api/houses/${house.code}`);
  await page.goto('/what-if');
  await expect(page.getByText('nothing is stored')).toBeVisible();
  const line = page.getByRole('group', { name: 'Set-point 1' });
  await line.getByRole('combobox', { name: 'House' }).fill(house.name);
  await page.keyboard.press('Enter');
  const sites = await get<readonly Site[]>(page, '/api/sites');
  // Whose clocks the hour is of.
  await expect(line).toContainText(`clock of ${sites.find(({ code }) => code === house.site)?.name}`);
  await line.getByRole('textbox', { name: /^Medium/ }).fill('18');
  await page.getByRole('button', { name: 'See what happens' }).click();
  await expect(page.locator('.wish-said')).toContainText(/later/);
  await expect(page).toHaveURL(new RegExp(`set=${house.code}%7E18`));
  await expect(page.getByRole('region', { name: 'Batches that change' }).getByRole('row').nth(1)).toBeVisible();
  expect(await get<House>(page, `/api/houses/${house.code}`)).toEqual(before);
  await expectAccessible(page);

  await page.reload();
  await expect(page.locator('.wish-said')).toContainText(/later/);
  await expect(line.getByRole('textbox', { name: /^Medium/ })).toHaveValue('18');
});

test('lines that lack something are marked beside the field', async ({ page }) => {
  await page.goto('/what-if');
  await page.getByRole('textbox', { name: /^Medium/ }).fill('warm');
  await page.getByRole('button', { name: 'See what happens' }).click();
  const line = page.getByRole('group', { name: 'Set-point 1' });
  await expect(line.getByText('Choose one.')).toBeVisible();
  await expect(line.getByText('Type a temperature, for example 22.')).toBeVisible();
  await expect(page.getByRole('textbox', { name: /^Medium/ })).toHaveValue('warm');
});

test('is reached from the board and from a batch', async ({ page }) => {
  await page.goto('/board?weeks=4');
  await page.getByRole('link', { name: 'What if …' }).click();
  await expect(page).toHaveURL(/\/what-if\?.*weeks=4/);
  const [batch] = (await get<BatchList>(page, '/api/batches?state=live')).batches;
  if (!batch) throw new Error('the demo has no live batch');
  await page.goto(`/batches/${batch.id}`);
  await page.getByRole('link', { name: 'What if …' }).click();
  await expect(page.getByRole('group', { name: 'Move 1' })).toBeVisible();
});

test('fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/what-if');
  await expect(page.getByRole('group', { name: 'Set-point 1' })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await expectAccessible(page);
});
