import { expect, test, type Locator, type Page } from '@playwright/test';
import { expectAccessible } from './accessible';
import { emptyBusiness, type EmptyBusiness } from './empty-business';

/** From the first owner of an empty business to a board that can be sold from; what is pressed is counted. */
let business: EmptyBusiness;

test.beforeAll(async () => {
  test.setTimeout(300_000);
  business = await emptyBusiness();
});
test.afterAll(() => business.end());
test.use({ storageState: { cookies: [], origins: [] }, permissions: ['clipboard-read', 'clipboard-write'] });

const MOST_PRESSES = 60;
const CROPS = ['Verbena', 'Petunia', 'Calibrachoa', 'Bacopa', 'Lantana'] as const;
const daysAgo = (days: number) => new Date(Date.now() - days * 86_400_000).toISOString().slice(0, 10);

/** Twenty batches as rows copied from a spreadsheet: invented cultivars, three houses, two tray formats. */
function spreadsheet(): string {
  const names = ['Dusk', 'Noon', 'Ember', 'Harbor'];
  const rows = CROPS.flatMap((crop, i) =>
    names.map((name, j) => {
      const stuck = 30 - 3 * i - 2 * j;
      const [stage, reached] =
        j === 0 ? ['rooted', daysAgo(stuck - 16)] : j === 1 ? ['callused', daysAgo(stuck - 8)] : ['', ''];
      const format = j === 3 ? '72' : '105';
      const alive = String((j === 3 ? 72 : 105) * (10 + j) - 20);
      return [`House ${1 + (i % 3)}`, crop, name, format, 10 + j, daysAgo(stuck), stage, reached, alive, `L${i}${j}`];
    }),
  );
  return [['House', 'Crop', 'Variety', 'Tray', 'Trays', 'Stuck', 'Stage', 'Reached', 'Plants alive', 'Lot'], ...rows]
    .map((row) => row.join('\t'))
    .join('\n');
}

/** Counts what a hand does: keys that go down, and presses of the mouse. */
class Hand {
  presses = 0;

  constructor(private readonly page: Page) {}

  async watch(): Promise<void> {
    await this.page.exposeFunction('handPressed', () => {
      this.presses += 1;
    });
    await this.page.addInitScript(() => {
      const told = window as unknown as { handPressed: () => void };
      addEventListener('keydown', () => told.handPressed(), true);
      addEventListener('pointerdown', () => told.handPressed(), true);
    });
  }

  async press(...keys: string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text);
  }
}

test('the first board of twenty batches in at most sixty presses beyond the spreadsheet', async ({ page }) => {
  test.setTimeout(60_000);
  const hand = new Hand(page);
  await hand.watch();
  await page.goto(business.url);
  await page.getByLabel('One-time secret').fill(business.secret);
  await page.getByLabel('Name to sign in with').fill('rosa');
  await page.getByLabel('Your name, as others read it').fill('Rosa Vidal');
  await page.getByRole('textbox', { name: 'Password', exact: true }).fill('long enough');
  await page.getByRole('textbox', { name: 'Password again' }).fill('long enough');
  await page.keyboard.press('Enter');

  // The owner is made; from here on every press counts.
  await expect(page).toHaveURL(/\/setup\/first-day$/);
  await expect(page.getByRole('heading', { name: /Where you grow/ })).toBeVisible();
  await expectAccessible(page);
  const from = Date.now();
  hand.presses = 0;
  const click = (target: Locator) => target.click();

  await click(page.getByRole('button', { name: 'Save site and house' }));
  await expect(page.getByText('You have Nursery.')).toBeVisible();

  await click(page.getByLabel('Cells'));
  for (const figures of [
    ['105', '100', '540', '280'],
    ['72', '70', '540', '280'],
  ]) {
    for (const [i, figure] of figures.entries()) {
      await hand.type(figure);
      await hand.press(i < 3 ? 'Tab' : 'Enter');
    }
    await expect(page.getByText(figures[0] === '105' ? '105' : '105 · 72', { exact: true })).toBeVisible();
    await expect(page.getByLabel('Cells')).toBeFocused();
  }

  for (const crop of CROPS) await click(page.getByRole('checkbox', { name: crop }));
  await click(page.getByRole('button', { name: 'Take 5 crops' }));
  await expect(page.getByText('yours already')).toHaveCount(CROPS.length);

  await page.evaluate((text) => navigator.clipboard.writeText(text), spreadsheet());
  await click(page.getByRole('link', { name: 'Import batches' }));
  await click(page.getByLabel('or paste it here'));
  await hand.press('Control+V');
  await expect(page.getByLabel('Stage reached')).toHaveValue('Stage');
  await expectAccessible(page);
  await click(page.getByRole('button', { name: 'Preview' }));
  await expect(page.getByRole('heading', { name: /What would be written/ })).toBeVisible();
  await expect(page.getByText('Houses: House 2 · House 3')).toBeVisible();
  await expectAccessible(page);
  expect(await (await page.request.get(`${business.url}/api/batches`)).json()).toMatchObject({ batches: [] });
  await click(page.getByRole('button', { name: 'Import 20 batches' }));
  await expect(page.getByRole('heading', { name: '20 batches imported' })).toBeVisible();
  await click(page.getByRole('link', { name: 'Open the board' }));

  // A figure other than none stands in the row of a variety that was in the table.
  await expect(page.getByText('Verbena').first()).toBeVisible();
  await expect(page.getByRole('row', { name: /Dusk.*[1-9]/ }).first()).toBeVisible();
  const seconds = Math.round((Date.now() - from) / 100) / 10;
  process.stdout.write(`first day: ${hand.presses} presses, ${seconds} s by script\n`);
  expect(hand.presses).toBeLessThanOrEqual(MOST_PRESSES);
});
