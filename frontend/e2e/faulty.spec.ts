import { expect, test } from '@playwright/test';
import type { BatchList, BoardBody } from '../src/shared/api-types';
import { expectAccessible } from './accessible';

/** The demo has no batch that cannot be computed, so one is played into what it answers. */
const FAULT = 'its variety has no profile';

test('a batch that cannot be computed is named on the board, in the list of batches and on its own page', async ({
  page,
}) => {
  await page.route('**/api/board?*', async (route) => {
    const response = await route.fetch();
    const board = (await response.json()) as BoardBody;
    const rows = board.rows.map((row, i) => (i === 0 ? { ...row, faulty: [{ batch: 'B-apart', fault: FAULT }] } : row));
    await route.fulfill({ response, json: { ...board, rows } });
  });
  await page.route('**/api/batches?*', async (route) => {
    const response = await route.fetch();
    const list = (await response.json()) as BatchList;
    const [like] = list.batches;
    if (!like) throw new Error('the demo has no batches');
    const { site, variety, varietyName, trayFormat, stuckAt } = like;
    const faulty = [{ id: 'B-apart', site, variety, varietyName, trayFormat, stuckAt, fault: FAULT }];
    await route.fulfill({ response, json: { ...list, faulty } });
  });
  await page.route('**/api/batches/B-apart', (route) =>
    route.fulfill({
      status: 500,
      contentType: 'application/problem+json',
      json: {
        type: '/problems/batch-not-computed',
        title: 'This batch cannot be computed',
        status: 500,
        detail: `Batch 'B-apart' is set apart. The reason: ${FAULT}.`,
        batch: 'B-apart',
      },
    }),
  );

  await page.goto('/board');
  const mark = page.getByRole('rowheader', { name: '1 batch not computed' });
  await expect(mark).toBeVisible();
  await expect(mark).toHaveAttribute('title', /B-apart/);
  await expectAccessible(page);

  await page.goto('/batches');
  const apart = page.getByRole('region', { name: '1 batch not computed' });
  await expect(apart).toContainText('B-apart');
  await expect(apart, 'what the log says is not for a reader').not.toContainText(FAULT);
  await expectAccessible(page);

  await apart.getByRole('link', { name: 'B-apart' }).click();
  await expect(page.getByRole('heading', { name: 'Batch B-apart cannot be computed', level: 2 })).toBeVisible();
  await expect(page.getByText('its plants are in no figure')).toBeVisible();
  await expectAccessible(page);
});
