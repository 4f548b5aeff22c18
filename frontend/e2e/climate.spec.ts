import { expect, test, type Page } from '@playwright/test';
import type { BatchList, House } from '../src/shared/api-types';
import type { ClimateSeries, PlannedSetpoint } from '../src/shared/climate-types';
import { expectAccessible, expectAccessibleByDayAndNight } from './accessible';

/** Every house against its recipe, and one in depth, against the demo. */

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

async function aFullHouse(page: Page): Promise<House> {
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const house = (await get<readonly House[]>(page, '/api/houses')).find(({ code }) => code === batches[0]?.house);
  if (!house) throw new Error('the demo has no house with a batch');
  return house;
}

test('shows every house with what it is now and its hours outside the recipe', async ({ page }) => {
  const houses = await get<readonly House[]>(page, '/api/houses');
  await page.goto('/climate');
  const table = page.getByRole('group', { name: 'Houses' }).getByRole('table');
  await expect(table.locator('tbody tr')).toHaveCount(houses.length);
  const full = await aFullHouse(page);
  const row = table.getByRole('row').filter({ has: page.getByRole('link', { name: full.name, exact: true }) });
  await expect(row.first()).toContainText(/°C/);
  await expect(row.first()).toContainText(/in recipe|h below|h above|recipes clash/);
  await row.first().getByRole('link').first().click();
  await expect(page).toHaveURL(new RegExp(`/climate/${full.code}$`));
});

test('asks once for all houses, not house by house', async ({ page }) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await page.goto('/climate');
  const table = page.getByRole('group', { name: 'Houses' }).getByRole('table');
  await expect(table.getByText(/°C/).first()).toBeVisible();
  expect(asked).toContain('/api/climate');
  expect(asked.filter((path) => /^\/api\/houses\/[^/]+\/(now|climate)$/.test(path))).toEqual([]);
});

test('draws the hours of a house over the band of its batches, with a table behind', async ({ page }) => {
  const house = await aFullHouse(page);
  await page.goto(`/climate/${house.code}?days=3`);
  const medium = page.getByRole('region', { name: 'Medium temperature' });
  await expect(medium.locator('canvas')).toBeVisible();
  await medium.getByText('The figures as a table').click();
  await expect(medium.getByRole('columnheader', { name: 'recipe, low' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Batches in this house' }).getByRole('row').nth(1)).toBeVisible();
  await page.getByLabel('Period').selectOption('7');
  await expect(page).toHaveURL(/days=7/);
});

test('a set-point is planned from the page of its house, and a wrong one said beside the field', async ({ page }) => {
  const house = await aFullHouse(page);
  const before = await get<readonly PlannedSetpoint[]>(page, `/api/houses/${house.code}/setpoints`);
  await page.goto(`/climate/${house.code}`);
  const form = page.getByRole('group', { name: 'Plan a change' });
  await form.getByRole('textbox', { name: /^Medium/ }).fill('warm');
  await form.getByRole('button', { name: 'Plan it' }).click();
  await expect(form.getByText('Type one number, for example 12 or 0.5.')).toBeVisible();

  const inAMonth = new Date(Date.now() + 30 * 86_400_000).toISOString().slice(0, 10);
  await form.getByRole('textbox', { name: /^Medium/ }).fill('21.5');
  await form.getByRole('combobox', { name: 'From' }).fill(inAMonth);
  await page.keyboard.press('Tab');
  await form.getByRole('button', { name: 'Plan it' }).click();
  await expect(page.getByText('The set-point is planned')).toBeVisible();
  const after = await get<readonly PlannedSetpoint[]>(page, `/api/houses/${house.code}/setpoints`);
  expect(after.length).toBe(before.length + 1);
  expect(after.some(({ mediumC }) => mediumC === 21.5)).toBe(true);
});

test('a doubtful reading is listed with its reason and can be counted all the same, and left out again', async ({
  page,
}) => {
  const house = await aFullHouse(page);
  // No probe in a medium shows this; it is kept aside with its reason.
  const at = new Date(Date.now() - 30 * 60_000).toISOString();
  await page.request.post('/api/readings', {
    data: [
      { house: house.code, quantity: 'medium-temperature', value: 21, unit: 'Cel', at: new Date().toISOString() },
      { house: house.code, quantity: 'medium-temperature', value: -127, unit: 'Cel', at },
    ],
  });
  const period = new URLSearchParams({
    from: new Date(Date.now() - 86_400_000).toISOString(),
    to: new Date().toISOString(),
    quantity: 'medium-temperature',
  });
  const series = await get<ClimateSeries>(page, `/api/houses/${house.code}/climate?${period}`);
  expect(series.flags?.some(({ kind }) => kind === 'range')).toBe(true);
  await page.goto(`/climate/${house.code}?days=1`);
  const line = page
    .getByRole('region', { name: 'Doubtful readings' })
    .getByRole('listitem')
    .filter({ hasText: 'out of range' })
    .first();
  await expect(line).toBeVisible();
  await line.getByRole('button', { name: /^Override/ }).click();
  await line.getByRole('button', { name: 'Override' }).last().click();
  await expect(line.getByText('Say why, so that the next one knows.')).toBeVisible();
  await line.getByRole('textbox', { name: 'Why?' }).fill('tried in the browser');
  await line.getByRole('button', { name: 'Override' }).last().click();
  await expect(line).toContainText('overridden, counts: tried in the browser');
  await line.getByRole('button', { name: /^Leave it out again/ }).click();
  await line.getByRole('textbox', { name: 'Why?' }).fill('put back');
  await line.getByRole('button', { name: 'Leave it out again' }).last().click();
  await expect(line).toContainText('left out');
});

test('passes the accessibility rules by day and by night', async ({ page }) => {
  await page.goto('/climate');
  await expect(page.getByText(/in recipe|h below|h above/).first()).toBeVisible();
  await expectAccessibleByDayAndNight(page);
  const house = await aFullHouse(page);
  await page.goto(`/climate/${house.code}`);
  await expect(page.locator('.uplot canvas').first()).toBeVisible();
  await expectAccessibleByDayAndNight(page);
});

test('fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const house = await aFullHouse(page);
  for (const path of ['/climate', `/climate/${house.code}`]) {
    await page.goto(path);
    await expect(page.locator('main').getByText(/°C/).first()).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  }
  await expectAccessible(page);
});
