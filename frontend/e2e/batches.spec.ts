import { expect, test, type Page } from '@playwright/test';
import type { BatchList, BatchView, EntryView } from '../src/shared/api-types';
import { expectAccessible, expectAccessibleByDayAndNight } from './accessible';

/** The list of batches and the story of one, against the demo. */

async function batchesOf(page: Page, query = 'state=live'): Promise<readonly BatchView[]> {
  const answer = await page.request.get(`/api/batches?${query}`);
  expect(answer.ok()).toBe(true);
  return ((await answer.json()) as BatchList).batches;
}

async function openList(page: Page, query = ''): Promise<void> {
  await page.goto(`/batches${query}`);
  await expect(page.getByRole('grid').getByRole('gridcell').first()).toBeVisible();
}

const rowCount = (page: Page) => page.getByRole('grid').getAttribute('aria-rowcount');

/** Rooted or ready, so that stages were seen and the story has something to tell. */
async function aToldBatch(page: Page): Promise<BatchView> {
  const found = (await batchesOf(page)).find(
    ({ stage, plants, outlook }) => stage === 'ROOT' && plants.lost > 0 && outlook,
  );
  if (!found) throw new Error('the demo has no rooted batch with losses');
  return found;
}

test('lists every live batch and narrows by stage, crop and text, all in the address', async ({ page }) => {
  const all = await batchesOf(page);
  await openList(page);
  expect(await rowCount(page)).toBe(String(all.length + 1));

  await page.getByLabel('Stage').selectOption('ROOT');
  await expect.poll(() => rowCount(page)).toBe(String(all.filter(({ stage }) => stage === 'ROOT').length + 1));
  await expect(page).toHaveURL(/stage=ROOT/);

  const { crop } = all.find(({ stage }) => stage === 'ROOT') as BatchView;
  await page.getByLabel('Crop').selectOption(crop);
  const both = all.filter((batch) => batch.stage === 'ROOT' && batch.crop === crop);
  await expect.poll(() => rowCount(page)).toBe(String(both.length + 1));

  await page.reload();
  await expect.poll(() => rowCount(page)).toBe(String(both.length + 1));

  await page.getByLabel('Find', { exact: true }).fill((both[0] as BatchView).id);
  await expect.poll(() => rowCount(page)).toBe('2');
  await page.getByRole('button', { name: 'Clear filters' }).click();
  await expect.poll(() => rowCount(page)).toBe(String(all.length + 1));
});

test('sorts by a column and turns it round', async ({ page }) => {
  const alive = (await batchesOf(page)).map(({ plants }) => plants.alive).sort((a, b) => b - a);
  await openList(page);
  const first = page.getByRole('grid').locator('.batch-grid-body .col-alive').first();
  const shown = (n: number | undefined) => new Intl.NumberFormat('en-GB').format(n ?? NaN);
  await page.getByRole('columnheader', { name: 'Alive' }).getByRole('button').click();
  await expect(first).toHaveText(shown(alive[0]));
  await page.getByRole('columnheader', { name: 'Alive' }).getByRole('button').click();
  await expect(first).toHaveText(shown(alive.at(-1)));
});

test('is walked by keys to the last batch, and Enter opens it', async ({ page }) => {
  const all = await batchesOf(page);
  await openList(page, '?sort=id');
  const grid = page.getByRole('grid');
  await grid.focus();
  await page.keyboard.press('Control+End');
  await expect(grid).toHaveAttribute('aria-activedescendant', new RegExp(`^batch-cell-${all.length - 1}-`));
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/batches\/[^/?#]+$/);
  await expect(page.locator('.batch-name')).toBeVisible();
});

test('tells the story of a batch down to its postings, and draws its development', async ({ page }) => {
  const batch = await aToldBatch(page);
  const answer = await page.request.get(`/api/batches/${batch.id}/entries`);
  const entries = (await answer.json()) as readonly EntryView[];
  await page.goto(`/batches/${batch.id}`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`Batch ${batch.id}`);

  const story = page.getByRole('region', { name: 'Story' });
  await expect(story.locator('.story > li')).toHaveCount(entries.length);
  await story.locator('.story > li').last().getByText('Ledger entries').click();
  await expect(
    story
      .locator('.story > li')
      .last()
      .getByRole('row', { name: /Supplier/ }),
  ).toContainText(new Intl.NumberFormat('en-GB').format(batch.plants.stuck));

  await expect(page.getByRole('region', { name: 'Progress' }).locator('canvas')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Medium temperature' }).locator('canvas')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Outlook' })).toContainText('Saleable trays');
});

test('a figure opens what it is made of', async ({ page }) => {
  const batch = await aToldBatch(page);
  const [cause] = Object.entries(batch.lostByCause).find(([, plants]) => plants > 0) as [string, number];
  await page.goto(`/batches/${batch.id}`);
  await page.locator('.head-figures').getByRole('link', { name: /%/ }).click();
  await expect(page).toHaveURL(/#losses$/);
  await page.getByRole('region', { name: 'Losses by cause' }).getByRole('link').first().click();
  await expect(page).toHaveURL(/cause=[a-z-]+#story$/);
  expect(cause).toBeTruthy();
  const story = page.getByRole('region', { name: 'Story' });
  await expect(story.locator('.story > li').first()).toBeVisible();
  await story.getByRole('button', { name: 'Show all entries' }).click();
  await expect(page).not.toHaveURL(/cause=/);
});

test('a loss recorded at the desk can be undone from the story', async ({ page }) => {
  const batch = await aToldBatch(page);
  await page.goto(`/batches/${batch.id}`);
  await page.getByRole('button', { name: 'Loss', exact: true }).click();
  await page.getByRole('textbox', { name: 'Plants lost' }).fill('4');
  await page.getByRole('button', { name: 'Damage' }).click();
  await page.getByRole('button', { name: 'Record' }).click();
  const story = page.getByRole('region', { name: 'Story' });
  const newest = story.locator('.story > li').first();
  await expect(newest).toContainText('4 plants, Damage');
  await newest.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Yes, undo it' }).click();
  await expect(story.locator('.story > li').first()).toContainText('Entered by mistake');
  const after = (await batchesOf(page)).find(({ id }) => id === batch.id);
  expect(after?.plants.alive).toBe(batch.plants.alive);
});

test('the form for a new batch marks each thing that is missing beside it and keeps what was typed', async ({
  page,
}) => {
  await openList(page);
  await page.getByRole('button', { name: 'Stick a batch' }).click();
  const dialog = page.getByRole('dialog', { name: 'Stick a batch' });
  await dialog.getByLabel('Trays', { exact: false }).first().fill('2.5');
  await dialog.getByRole('button', { name: 'Stick', exact: true }).click();
  await expect(dialog.getByText('Choose one.').first()).toBeVisible();
  await expect(dialog.getByText('Type a whole number of trays, 1 or more.')).toBeVisible();
});

test('a typed date and Enter stick the batch on that date, and the undo takes it away', async ({ page }) => {
  const batch = await aToldBatch(page);
  await page.goto(`/batches?site=${batch.site}`);
  await page.getByRole('button', { name: 'Stick a batch' }).click();
  const dialog = page.getByRole('dialog', { name: 'Stick a batch' });
  const choose = async (label: string, text: string) => {
    await dialog.getByRole('combobox', { name: label }).fill(text);
    // the page's own filters have options of the same names
    await page.locator('vaadin-combo-box-item:visible', { hasText: text }).first().click();
  };
  await choose('Variety', batch.varietyName);
  await choose('Tray format', `${batch.trayFormat}:`);
  const houses: readonly { code: string; name: string }[] = await (await page.request.get('/api/houses')).json();
  await choose('House', houses.find(({ code }) => code === batch.house)?.name ?? batch.house);
  await dialog.getByRole('textbox', { name: 'Trays' }).fill('3');
  const lastWeek = new Date(Date.now() - 7 * 86_400_000).toISOString().slice(0, 10);
  await dialog.getByRole('combobox', { name: 'Stuck on' }).fill(lastWeek);
  await page.keyboard.press('Enter');

  await expect(page).toHaveURL(/batches\/[^?]+/);
  const id = decodeURIComponent(/batches\/([^?]+)/.exec(page.url())?.[1] ?? '');
  const stuck = (await (await page.request.get(`/api/batches/${id}`)).json()) as { readonly stuckAt: string };
  expect(Math.abs(Date.parse(stuck.stuckAt) - Date.parse(lastWeek)) / 86_400_000).toBeLessThan(2);
  await page.locator('.notice').getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText(`Batch ${id}: the sticking is undone`)).toBeVisible();
  await expect.poll(async () => (await page.request.get(`/api/batches/${id}`)).status()).toBe(404);
});

test('passes the accessibility rules by day and by night', async ({ page }) => {
  const batch = await aToldBatch(page);
  await openList(page);
  await expectAccessibleByDayAndNight(page);
  await page.goto(`/batches/${batch.id}`);
  await expect(page.locator('.uplot canvas').first()).toBeVisible();
  await expectAccessibleByDayAndNight(page);
  await page.getByRole('button', { name: 'Count', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Record' })).toBeVisible();
  await expectAccessibleByDayAndNight(page);
});

test('on a phone the list is cards', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/batches');
  await expect(page.locator('.batch-card').first()).toBeVisible();
  await expect(page.getByRole('grid')).toHaveCount(0);
  await expectAccessible(page);

  // A ready batch has no ranges; what else one asks of it stands there, and no gap.
  const ready = (await batchesOf(page)).find(({ outlook }) => outlook && outlook.readyAt.p10 === outlook.readyAt.p90);
  if (!ready) throw new Error('the demo has no ready batch');
  await page.goto(`/batches?text=${ready.id}`);
  await expect(page.locator('.batch-card', { hasText: ready.id })).toContainText(`${ready.trays} trays`);

  // The page of a batch folds: what leads to a part opens it.
  const { id } = await aToldBatch(page);
  await page.goto(`/batches/${id}`);
  const losses = page.getByRole('region', { name: 'Losses by cause' });
  await expect(losses.getByRole('table')).toHaveCount(0);
  await page.locator('.head-figures a[href="#losses"]').click();
  await expect(losses.locator('details')).toHaveAttribute('open', '');
  await expect(page.locator('.uplot')).toHaveCount(0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await expectAccessible(page);
});
