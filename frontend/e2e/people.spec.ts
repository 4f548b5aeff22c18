import { expect, test, type Browser, type Page } from '@playwright/test';
import type { BatchList } from '../src/shared/api-types';
import { expectAccessible } from './accessible';

/** Ways in and out, against the demo's doors. Nobody is signed in when a story begins. */
test.use({ storageState: { cookies: [], origins: [] }, extraHTTPHeaders: {} });

async function enterBy(page: Page, door: 'Sales' | 'Production' | 'Manager'): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: new RegExp(`^${door}`) }).click();
  await expect(page).not.toHaveURL(/sign-in/); // or what the story asks for next goes without the session
}

const room = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name, exact: true });

async function openAccount(page: Page): Promise<void> {
  await page
    .getByRole('button', { name: /^Signed in as / })
    .first()
    .click();
}

async function phone(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
    storageState: { cookies: [], origins: [] },
    extraHTTPHeaders: {},
  });
  return context.newPage();
}

test('the demo opens on three doors, accessible by day and by night and in both languages', async ({ page }) => {
  await page.goto('/');
  await expect(page).toHaveURL(/\/sign-in/);
  await expect(page.getByRole('list', { name: 'Doors' }).getByRole('button')).toHaveCount(3);
  await expectAccessible(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('¿Por qué puerta entra?');
  await expectAccessible(page);
});

test('sales begins on the board, without the rooms that are not theirs', async ({ page }) => {
  await enterBy(page, 'Sales');
  await expect(page).toHaveURL(/\/board/);
  await page.goto('/batches');
  await expect(room(page, 'Batches')).toBeVisible();
  await expect(room(page, 'Floor')).toHaveCount(0);
  await expect(room(page, 'Setup')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Stick a batch' })).toHaveCount(0);

  await page.goto('/setup');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Not for your roles');
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Go to where you begin' }).click();
  await expect(page).toHaveURL(/\/board/);
});

test('production begins on the floor, a manager on the board with Setup', async ({ page, browser }) => {
  await enterBy(page, 'Production');
  await expect(page).toHaveURL(/\/floor/);

  const other = await browser.newPage();
  await enterBy(other, 'Manager');
  await expect(other).toHaveURL(/\/board/);
  await other.goto('/setup');
  await expect(other.getByRole('navigation', { name: 'Lists' }).getByRole('link', { name: 'People' })).toHaveCount(0);
  await other.close();
});

test('after signing in one is where the link led, and after signing out nowhere', async ({ page }) => {
  await page.goto('/climate?site=NORTH');
  await expect(page).toHaveURL(/\/sign-in/);
  await page.getByRole('button', { name: /^Manager/ }).click();
  await expect(page).toHaveURL(/\/climate\?site=NORTH/);

  await openAccount(page);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Sign out and take another door' }).click();
  await expect(page).toHaveURL(/\/sign-in/);
  expect((await page.request.get('/api/session')).status()).toBe(401);
  await page.goto('/board');
  await expect(page).toHaveURL(/\/sign-in/);
});

test('a wrong password is said beside the field, and what was typed stays', async ({ page }) => {
  await page.goto('/sign-in?with=name');
  await page.getByLabel('Name').fill('nobody-here');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Type your password.')).toBeVisible();
  await page.getByRole('textbox', { name: 'Password' }).fill('not the password');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^✕ ?Name or password is not right/)).toBeVisible();
  await expect(page.getByLabel('Name')).toHaveValue('nobody-here');
  await expect(page.getByRole('textbox', { name: 'Password' })).toBeFocused();
  await expectAccessible(page);
});

test('a lock-out counts down and then lets try again', async ({ page }) => {
  await page.clock.install();
  await page.route('**/api/session', (route) =>
    route.request().method() === 'POST'
      ? route.fulfill({
          status: 429,
          contentType: 'application/problem+json',
          json: { type: '/problems/locked-out', title: 'Too many', status: 429, detail: '', retryAfterSeconds: 90 },
        })
      : route.fallback(),
  );
  await page.goto('/sign-in?with=name');
  await page.getByLabel('Name').fill('ana');
  await page.getByRole('textbox', { name: 'Password' }).fill('guess upon guess');
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await expect(page.getByRole('timer')).toHaveText('You can try again in 1:30.');
  await expectAccessible(page);
  await page.clock.runFor(31_000);
  await expect(page.getByRole('timer')).toHaveText(/in 0:5\d\.$/);
  await page.clock.runFor(60_000);
  await expect(page.getByText('You can try again now.')).toBeVisible();
});

test('a session that ends leaves what was typed, and the same person goes on', async ({ page, context }) => {
  await enterBy(page, 'Manager');
  await page.goto('/setup/sites/~new');
  await page.getByLabel('Name').fill('Half typed');
  await context.clearCookies();
  await page.getByLabel('Code').fill('HALF');
  await page.getByLabel('Time zone').fill('Europe/Madrid');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Save' }).click();
  const dialog = page.getByRole('dialog', { name: 'You have been signed out' });
  await expect(dialog).toBeVisible();
  await expectAccessible(page);
  await dialog.getByRole('button', { name: /^Manager/ }).click();
  await expect(dialog).toHaveCount(0);
  await expect(page.getByLabel('Name')).toHaveValue('Half typed');
  await expect(page).toHaveURL(/\/setup\/sites\/~new/);
});

test('a phone is handed over in two taps, and an unsent entry waits for the one who pressed it', async ({
  browser,
}) => {
  const page = await phone(browser);
  await enterBy(page, 'Production');
  const { batches } = (await (await page.request.get('/api/batches?state=live')).json()) as BatchList;
  const batch = batches.find(({ plants, stage }) => plants.alive > 200 && stage !== 'READY');
  if (!batch) throw new Error('the demo has no live batch of more than 200 plants');
  await page.goto(`/floor?site=${batch.site}&batch=${batch.id}`);
  const entries = `/api/batches/${batch.id}/entries`;
  const before = ((await (await page.request.get(entries)).json()) as unknown[]).length;
  await page.route(`**${entries}`, (route) => (route.request().method() === 'POST' ? route.abort() : route.fallback()));
  await page.getByRole('button', { name: 'Loss', exact: true }).tap();
  await page.locator('.keypad').getByRole('button', { name: '3', exact: true }).tap();
  await page.getByRole('button', { name: 'Botrytis' }).tap();
  await page.getByRole('button', { name: 'Record' }).tap();
  await expect(page.getByText(/1 not yet sent/)).toBeVisible();

  await page
    .locator('.floor')
    .getByRole('button', { name: /^Signed in as / })
    .tap();
  await expect(page.getByText('1 entry is not yet sent.')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Hand over' }).tap();
  await expect(page.getByText(/^1 entry of .+ is still on this device\.$/)).toBeVisible({ timeout: 20_000 });
  await expectAccessible(page);

  await page.unroute(`**${entries}`);
  await page.getByRole('button', { name: /^Manager/ }).tap();
  await expect(page).not.toHaveURL(/\/sign-in/);
  await page.goto(`/floor?site=${batch.site}`);
  await expect(page.getByText(/^▲ ?Not yet sent, of .+: 1$/)).toBeVisible();
  await expect(page.getByText('All of yours sent')).toBeVisible();
  await page.getByText(/Not yet sent, of/).tap();
  await expectAccessible(page);
  expect((await (await page.request.get(entries)).json()) as unknown[]).toHaveLength(before);

  // Back in the hands of the one who pressed it, it goes; and is undone, so that other stories find the demo.
  await page
    .locator('.floor')
    .getByRole('button', { name: /^Signed in as / })
    .tap();
  await page.getByRole('button', { name: 'Hand over' }).tap();
  await page.getByRole('button', { name: /^Production/ }).tap();
  await expect
    .poll(async () => ((await (await page.request.get(entries)).json()) as unknown[]).length, { timeout: 20_000 })
    .toBe(before + 1);
  await page.goto(`/floor?site=${batch.site}&batch=${batch.id}`);
  await page
    .getByRole('button', { name: /^Undo: / })
    .first()
    .tap();
  await page.getByRole('button', { name: 'Yes, undo it' }).tap();
  await expect(page.getByText('All sent')).toBeVisible();
  await page.context().close();
});

test('the hand-over sheet has nothing to press smaller than 56 px', async ({ browser }) => {
  const page = await phone(browser);
  await enterBy(page, 'Production');
  await page
    .locator('.floor')
    .getByRole('button', { name: /^Signed in as / })
    .tap();
  const heights = await page
    .locator('.floor-person-sheet button:visible')
    .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
  expect(heights.length).toBeGreaterThanOrEqual(3);
  expect(heights.filter((height) => height < 56)).toEqual([]);
  await page.context().close();
});

test('one’s own sessions are listed, and another one can be ended', async ({ page, browser }) => {
  const other = await browser.newPage();
  await enterBy(other, 'Sales');
  await expect(other).toHaveURL(/\/board/);
  await enterBy(page, 'Sales');
  await expect(page).toHaveURL(/\/board/);
  await page.goto('/account/sessions');
  await expect(page.getByText('this device')).toBeVisible();
  await expectAccessible(page);
  await page
    .getByRole('button', { name: /^End the session on / })
    .first()
    .click();
  await expect(page.getByText(/^Session on .+ ended$/)).toBeVisible();
  await other.close();
});
