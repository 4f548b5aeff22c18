import { expect, test } from '@playwright/test';
import type { TrayFormat } from '../src/shared/api-types';
import { expectAccessible } from './accessible';

test('creates a tray format in inches and stores it in whole millimetres', async ({ page }) => {
  const code = `T${Date.now()}`;
  await page.goto('/setup/tray-formats');
  await page.getByRole('button', { name: 'Language, units and look' }).click();
  await page.getByLabel('inch').check();
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'New tray format' }).click();
  await page.getByLabel('Code').fill(code);
  await page.getByLabel('Cells').fill('72');
  await page.getByLabel('Sale count').fill('70');
  await page.getByLabel('Outside length').fill('21');
  await page.getByLabel('Outside width').fill('10.5');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('link', { name: code })).toBeVisible();

  // 25.4 mm to the inch: 533.4 and 266.7.
  const stored = (await (await page.request.get(`/api/tray-formats/${code}`)).json()) as TrayFormat;
  expect(stored).toMatchObject({ code, cells: 72, saleCount: 70, lengthMm: 533, widthMm: 267 });
});

test('the last letter is held when Enter follows before the screen was drawn again', async ({ page }) => {
  const code = `T${Date.now()}`;
  await page.goto('/setup/tray-formats/~new');
  await page.getByLabel('Code').fill(code);
  await page.getByLabel('Cells').fill('72');
  await page.getByLabel('Sale count').fill('70');
  await page.getByLabel('Outside length').fill('540');
  await page.getByLabel('Outside width').fill('28');
  // On a slow device both wait in one line; here both are done in one go.
  await page.getByLabel('Outside width').evaluate((input: HTMLInputElement) => {
    input.value = '280';
    input.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    input.closest('form')?.requestSubmit();
  });
  await expect(page.getByRole('link', { name: code })).toBeVisible();

  const stored = (await (await page.request.get(`/api/tray-formats/${code}`)).json()) as TrayFormat;
  expect(stored).toMatchObject({ code, lengthMm: 540, widthMm: 280 });
});

test('keeps what was typed and says beside the field how to mend it', async ({ page }) => {
  await page.goto('/setup/sites/~new');
  await page.getByLabel('Code').fill('no blanks');
  await page.keyboard.press('Tab');
  await expect(page.getByLabel('Name')).toBeFocused();
  // One ring, that of the whole field.
  await expect(page.getByLabel('Name')).toHaveCSS('outline-style', 'none');
  await page.getByLabel('Name').fill('North Field');
  await page.getByRole('button', { name: 'Save' }).click();

  await expect(page.getByText(/^Up to 32 letters/)).toBeVisible();
  await expect(page.getByLabel('Code')).toHaveValue('no blanks');
  await expect(page.getByLabel('Name')).toHaveValue('North Field');
});

test('a new crop starts from a seeded profile, and what is wrong in the fold is shown', async ({ page }) => {
  await page.goto('/setup/crops/~new');
  await page.getByLabel('Start from').selectOption({ label: 'Verbena' });
  await expect(page.getByLabel('From sticking to callus')).toHaveValue('6');
  const highest = page.getByLabel('forming roots stands still above °C');
  await expect(highest).toBeHidden();
  await page.getByRole('textbox', { name: 'Code' }).fill(`c${Date.now()}`);
  await page.getByRole('textbox', { name: 'Name' }).fill('Verbena of a cool house');
  await page.getByText('All other figures').click();
  await expect(page.getByLabel(/^Spread between batches/)).toHaveValue('10');
  await highest.fill('5');
  await page.getByText('All other figures').click();
  await expect(highest).toBeHidden();
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(highest).toBeVisible();
  await expect(highest).toHaveAttribute('aria-invalid', 'true');
  // The lowest of this stage is 10 °C.
  await expect(page.getByText(/These must rise: lowest 10/).first()).toBeVisible();
  await expectAccessible(page);
});

for (const path of [
  '/setup',
  '/setup/houses',
  '/setup/tray-formats',
  '/setup/crops',
  '/setup/varieties',
  '/setup/crops/~new',
]) {
  test(`${path} is accessible`, async ({ page }) => {
    await page.goto(path);
    await expect(page.getByRole('heading', { level: 2 }).first()).toBeVisible();
    await expectAccessible(page);
  });
}

test('an address that does not exist says so and leads back', async ({ page }) => {
  await page.goto('/no-such-room');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is no such page');
  await page.getByRole('link', { name: 'Go to the board' }).click();
  await expect(page).toHaveURL(/\/board$/);
});
