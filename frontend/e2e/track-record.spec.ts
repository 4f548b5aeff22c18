import { expect, test, type Page } from '@playwright/test';
import type { TrackRecord } from '../src/shared/learning-types';
import { expectAccessible, expectAccessibleByDayAndNight } from './accessible';

/** How earlier predictions turned out, against the finished batches of the demo. */

async function recordOf(page: Page, query = ''): Promise<TrackRecord> {
  const answer = await page.request.get(`/api/track-record${query}`);
  expect(answer.ok()).toBe(true);
  return (await answer.json()) as TrackRecord;
}

const oneDecimal = (n: number | null) =>
  new Intl.NumberFormat('en-GB', { minimumFractionDigits: 1, maximumFractionDigits: 1 }).format(Math.abs(n ?? NaN));

test('says the score in plain words beside both simple ways of counting', async ({ page }) => {
  const record = await recordOf(page);
  expect(record.n).toBeGreaterThan(0);
  await page.goto('/track-record');
  await expect(page.locator('.record-main')).toContainText(
    `At 7 days’ lead the ready date was off by ${oneDecimal(record.maeDays)} days on average.`,
  );
  const figures = page.locator('.record-figures');
  await expect(figures).toContainText(`${oneDecimal(record.baselines.calendar.maeDays)} days`);
  await expect(figures).toContainText(`${oneDecimal(record.baselines.degreeDays.maeDays)} days`);
  await expect(page.getByText(`From ${record.n} finished batches`)).toBeVisible();
});

test('each plot has its figures as a table behind it', async ({ page }) => {
  const { batches } = await recordOf(page);
  await page.goto('/track-record');
  for (const name of ['Error by lead', 'Ranges: stated and held', 'Predicted against what came']) {
    const plot = page.getByRole('region', { name, exact: true });
    await expect(plot.locator('canvas')).toBeVisible();
    await plot.getByText('The figures as a table').click();
    await expect(plot.locator('details').getByRole('row').nth(1)).toBeVisible();
  }
  // The plot's own legend is a table too, so the rows are those behind "The figures as a table".
  const misses = page.getByRole('region', { name: 'Predicted against what came', exact: true }).locator('details');
  await expect(misses.getByRole('row')).toHaveCount(batches.length + 1);
});

test('says of which crops the dates cannot be trusted, and what would help', async ({ page }) => {
  const { byCrop, bySite } = await recordOf(page);
  await page.goto('/track-record');
  const room = page.getByRole('region', { name: 'Can the dates be trusted?' });
  // What stands open; what the record has made of the ranges of every crop is folded away below.
  const doubts = room.locator('> ul > li');
  for (const { cropName, verdict, n } of byCrop) {
    await expect(doubts.filter({ hasText: `${cropName}:` })).toHaveCount(
      verdict.startsWith('too-') && verdict !== 'too-few' ? 1 : 0,
    );
    await expect(room.getByText(`${cropName} (${n})`)).toHaveCount(verdict === 'too-few' ? 1 : 0);
  }
  await room.getByText('How often they held, by lead, site and season').click();
  for (const { siteName, held } of bySite) {
    await expect(room.getByRole('row', { name: `${siteName} ${held.n}` })).toBeVisible();
  }
});

test('another lead and one crop are kept in the address', async ({ page }) => {
  const { byCrop } = await recordOf(page, '?leadDays=3');
  const crop = byCrop[0];
  if (!crop) throw new Error('the demo has no finished batch predicted three days before');
  await page.goto('/track-record');
  await page.getByLabel('Predicted this many days before').selectOption('3');
  await expect(page).toHaveURL(/lead=3/);
  await page.getByRole('region', { name: 'By crop' }).getByRole('button', { name: crop.cropName }).click();
  await expect(page).toHaveURL(new RegExp(`crop=${crop.crop}`));
  const narrowed = await recordOf(page, `?leadDays=3&crop=${crop.crop}`);
  await expect(page.locator('.record-main')).toContainText(`3 days’ lead`);
  await expect(page.locator('.record-main')).toContainText(oneDecimal(narrowed.maeDays));
  await page.goBack();
  await expect(page).not.toHaveURL(/crop=/);
});

test('passes the accessibility rules by day and by night', async ({ page }) => {
  await page.goto('/track-record');
  await expect(page.locator('.uplot canvas').first()).toBeVisible();
  await expectAccessibleByDayAndNight(page);
});

test('fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/track-record');
  await expect(page.locator('.record-main')).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await expectAccessible(page);
});
