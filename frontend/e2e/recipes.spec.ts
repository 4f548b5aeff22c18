import { expect, test, type Page } from '@playwright/test';
import type { CropRecipe } from '../src/shared/climate-types';
import { expectAccessibleByDayAndNight } from './accessible';

/** A crop's recipe changed, compared and put back, against the demo. */

const CROP = 'bacopa';
const ADDRESS = `/setup/crops/${CROP}/recipe`;

async function recipe(page: Page): Promise<CropRecipe> {
  const answer = await page.request.get(`/api/crops/${CROP}/recipe`);
  expect(answer.ok()).toBe(true);
  return (await answer.json()) as CropRecipe;
}

const field = (page: Page, name: RegExp) => page.getByRole('textbox', { name });

test('a recipe is changed in °F, compared with the one before, and put back', async ({ browser }) => {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: 'en-US' });
  const page = await context.newPage();
  const first = await recipe(page);
  await page.goto(`/setup/crops/${CROP}`);
  await page.getByRole('link', { name: /^Its recipe/ }).click();
  const most = field(page, /^forming roots, Medium \(°F\), at most$/);
  // 23.3 °C are 73.94 °F; limits are shown to the half degree and kept as they were when they are not touched.
  await expect(most).toHaveValue('74');
  await most.fill('77');
  await page.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(page.getByText(`Version ${first.version + 1} is in force`)).toBeVisible();
  const changed = await recipe(page);
  expect(changed.phases[2]?.mediumC).toEqual({ least: first.phases[2]?.mediumC.least, most: 25 });
  expect(changed.phases[1]).toEqual(first.phases[1]);

  const versions = page.getByRole('region', { name: 'Versions' });
  await expect(versions.getByRole('row').nth(1)).toContainText('forming roots, Medium: 68 – 74 → 68 – 77 °F');
  await versions.getByRole('link', { name: `Version ${first.version}`, exact: true }).click();
  await expect(page.getByText('Saving puts it in force again.')).toBeVisible();
  await expect(field(page, /^forming roots, Medium \(°F\), at most$/)).toHaveValue('74');
  await page.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(page.getByText(`Version ${first.version + 2} is in force`)).toBeVisible();
  expect((await recipe(page)).phases).toEqual(first.phases);
  await context.close();
});

test('what cannot be meant is marked where it stands, kept as typed and not saved', async ({ page }) => {
  const before = await recipe(page);
  await page.goto(ADDRESS);
  const least = field(page, /^forming callus, Relative humidity \(%\), at least$/);
  const most = field(page, /^forming callus, Relative humidity \(%\), at most$/);
  await most.fill('7O');
  await page.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(most).toHaveAttribute('aria-invalid', 'true');
  await expect(most).toHaveValue('7O');
  await most.fill('70');
  await least.fill('75');
  await page.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(page.getByText('Lower than the other end.')).toBeVisible();
  await most.fill('170');
  await page.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(page.locator('.recipe-fault')).toContainText('must lie between 0% and 100%');
  await expect(most).toHaveAttribute('aria-invalid', 'true');
  await expect(most).toHaveValue('170');
  expect((await recipe(page)).version).toBe(before.version);

  await page.getByRole('link', { name: 'All crops' }).click();
  await expect(page.getByText('What you typed is not saved.')).toBeVisible();
  await page.getByRole('button', { name: 'Stay here' }).click();
  await expect(most).toHaveValue('170');
  await page.getByRole('link', { name: 'All crops' }).click();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await expect(page).toHaveURL(/\/setup\/crops$/);
});

for (const [name, viewport] of [
  ['by day and by night', { width: 1440, height: 900 }],
  ['on a phone', { width: 390, height: 844 }],
] as const) {
  test(`is accessible ${name}`, async ({ browser }) => {
    const context = await browser.newContext({ viewport, locale: 'en-GB' });
    const page = await context.newPage();
    await page.goto(ADDRESS);
    await expect(page.getByRole('heading', { name: 'Versions' })).toBeVisible();
    await expectAccessibleByDayAndNight(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    await context.close();
  });
}
