import { expect, test, type Page } from '@playwright/test';
import type { Crop } from '../src/shared/api-types';
import type { ProfileVersion, TrackRecord } from '../src/shared/learning-types';
import { expectAccessible } from './accessible';

/** What the batches teach, from proposal to adoption and back, against the demo. */

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

/** The crop of which most batches are finished: there is something to learn from. */
async function aTaughtCrop(page: Page): Promise<Crop> {
  const { byCrop } = await get<TrackRecord>(page, '/api/track-record');
  const [most] = [...byCrop].sort((a, b) => b.n - a.n);
  if (!most) throw new Error('the demo has no crop with finished batches');
  return get<Crop>(page, `/api/crops/${most.crop}`);
}

const versionsOf = (page: Page, crop: string) => get<readonly ProfileVersion[]>(page, `/api/crops/${crop}/profiles`);

test('a proposal is reviewed, adopted, pinned and unpinned, and the earlier version returned to', async ({ page }) => {
  const crop = await aTaughtCrop(page);
  const before = (await versionsOf(page, crop.code)).find(({ inForce }) => inForce);
  if (!before) throw new Error(`no version of ${crop.code} is in force`);
  await page.goto(`/setup/crops/${crop.code}/profiles`);
  await page.getByRole('button', { name: 'Learn from the batches' }).click();
  await expect(page).toHaveURL(/\/profiles\/\d+$/);
  const version = Number(new URL(page.url()).pathname.split('/').at(-1));
  const review = page.getByRole('region', { name: `Version ${version}` });
  await expect(review).toContainText(`compared with version ${before.version}`);
  await expect(review.getByRole('region', { name: 'What it rests on' })).toContainText(
    /finished and \d+ running batches/,
  );
  expect((await versionsOf(page, crop.code)).find(({ inForce }) => inForce)?.version).toBe(before.version);
  const weighed = review.getByRole('region', { name: 'What adopting it would change' });
  const past = weighed.getByRole('group', { name: 'How far off past batches would have been', exact: true });
  await expect(past.getByRole('row', { name: /^7 days before ready/ })).toContainText(/\d d/);
  await expect(weighed).toContainText(/each foretold with a profile learned without it/);
  await expect(weighed.getByRole('status').or(weighed.getByText(/^Nothing would change/))).toBeVisible();
  await expectAccessible(page);

  await review.getByRole('button', { name: 'Adopt and pin' }).click();
  await expect(page.getByText(`Version ${version} is in force and pinned`)).toBeVisible();
  expect((await get<Crop>(page, `/api/crops/${crop.code}`)).profile.version).toBe(version);

  await page.getByRole('link', { name: `Version ${before.version}`, exact: true }).click();
  await expect(page.getByText(`Version ${version} is pinned. Let it loose before adopting another.`)).toBeVisible();
  await page.getByRole('link', { name: `Version ${version}`, exact: true }).click();
  await page.getByRole('button', { name: 'Unpin' }).click();
  await expect(page.getByRole('button', { name: 'Pin', exact: true })).toBeVisible();
  await page.getByRole('link', { name: `Version ${before.version}`, exact: true }).click();
  await page.getByRole('button', { name: 'Return to this version' }).click();
  await expect
    .poll(async () => (await versionsOf(page, crop.code)).find(({ inForce }) => inForce)?.version)
    .toBe(before.version);
});

test('an unknown crop or version says so', async ({ page }) => {
  await page.goto('/setup/crops/no-such-crop/profiles');
  await expect(page.getByText('There is no crop no-such-crop.')).toBeVisible();
  const crop = await aTaughtCrop(page);
  await page.goto(`/setup/crops/${crop.code}/profiles/999`);
  await expect(page.getByText('There is no version 999.')).toBeVisible();
});

test('the versions fit a phone', async ({ page }) => {
  const crop = await aTaughtCrop(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`/setup/crops/${crop.code}/profiles`);
  await expect(page.getByRole('region', { name: 'Versions' })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await expectAccessible(page);
});
