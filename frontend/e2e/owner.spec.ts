import { expect, test, type Page } from '@playwright/test';
import type { AuditLine, KeyView, NewPerson, PersonView } from '../src/people/people-types';
import { expectAccessible } from './accessible';

/** What an owner does. The demo has no owner's door, so who is signed in, people, keys and audit list are played. */
const ROSA: PersonView = {
  name: 'rosa',
  displayName: 'Rosa Vidal',
  active: true,
  signsInWith: 'password',
  createdAt: '2026-11-01T08:00:00Z',
  grants: [{ role: 'OWNER', site: null }],
};
const LINE: AuditLine = {
  at: '2026-11-27T08:00:00Z',
  who: 'ana',
  what: 'no-right',
  detail: 'POST /api/orders',
  from: '10.0.4.7',
};

async function asOwner(page: Page): Promise<{ added: NewPerson[]; keys: KeyView[] }> {
  const people: PersonView[] = [ROSA];
  const added: NewPerson[] = [];
  const keys: KeyView[] = [];
  await page.route('**/api/session', (route) => route.fulfill({ json: { ...ROSA } }));
  await page.route('**/api/people', (route) => {
    if (route.request().method() === 'POST') {
      const { password, ...person } = route.request().postDataJSON() as NewPerson;
      added.push({ password, ...person });
      people.push({ ...person, active: true, signsInWith: 'password', createdAt: '2026-11-27T08:00:00Z' });
      return route.fulfill({ status: 201, json: people.at(-1) });
    }
    return route.fulfill({ json: people });
  });
  await page.route('**/api/keys', (route) => {
    if (route.request().method() === 'POST') {
      const { name, grants } = route.request().postDataJSON() as KeyView;
      keys.push({
        id: 'k1',
        name,
        grants,
        createdAt: '2026-11-27T08:00:00Z',
        createdBy: 'rosa',
        lastUsedAt: null,
        endedAt: null,
      });
      return route.fulfill({ status: 201, json: { id: 'k1', key: 'shown-this-once' } });
    }
    return route.fulfill({ json: keys });
  });
  await page.route('**/api/audit?*', (route) => route.fulfill({ json: [LINE] }));
  return { added, keys };
}

test('an owner adds somebody for one site, after being told what is missing', async ({ page }) => {
  const { added } = await asOwner(page);
  await page.goto('/setup/people');
  await expect(page.getByRole('link', { name: 'Rosa Vidal' })).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'New person' }).click();
  await page.getByRole('button', { name: 'Add the person' }).click();
  await expect(page.getByText('This is needed.').first()).toBeVisible();
  await page.getByLabel('Name, as others read it').fill('Ana Ruiz');
  await page.getByLabel('Signs in as').fill('ana');
  await page.getByRole('textbox', { name: 'First password' }).fill('too short');
  await page
    .getByRole('checkbox', { name: /^Production, / })
    .nth(1)
    .check();
  await page.getByRole('button', { name: 'Add the person' }).click();
  await expect(page.getByText('At least 10 characters.')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('textbox', { name: 'First password' }).fill('long enough');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('link', { name: 'Ana Ruiz' })).toBeVisible();
  expect(added).toMatchObject([{ name: 'ana', displayName: 'Ana Ruiz', password: 'long enough' }]);
  expect(added[0]?.grants).toHaveLength(1);
  expect(added[0]?.grants[0]?.role).toBe('PRODUCTION');
  expect(added[0]?.grants[0]?.site).not.toBeNull();
});

test('a key is shown once', async ({ page }) => {
  await asOwner(page);
  await page.goto('/setup/keys');
  await page.getByRole('button', { name: 'New key' }).click();
  await page.getByLabel('What is it for?').fill('Weather mast');
  await page.getByRole('button', { name: 'Make the key' }).click();
  await expect(page.getByText('Choose a role at least.')).toBeVisible();
  await page.getByRole('checkbox', { name: 'Device, All sites' }).check();
  await page.getByRole('button', { name: 'Make the key' }).click();
  await expect(page.getByRole('textbox', { name: 'Key' })).toHaveValue('shown-this-once');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'I have put it away' }).click();
  await expect(page.getByRole('rowheader', { name: 'Weather mast' })).toBeVisible();
  await expect(page.getByText('shown-this-once')).toHaveCount(0);
  await expectAccessible(page);
});

test('an owner reads what was refused', async ({ page }) => {
  await asOwner(page);
  await page.goto('/setup/audit');
  await expect(page.getByRole('row', { name: /ana.*refused: no right.*POST \/api\/orders/ })).toBeVisible();
  await expectAccessible(page);
});

test('an owner reads who changed the set-up in words, and finds a change', async ({ page }) => {
  await asOwner(page);
  const changes = [
    { id: 9, at: '2026-11-27T09:00:00Z', who: 'ana', what: 'PUT /api/houses/TARROW-1' },
    { id: 8, at: '2026-11-27T08:00:00Z', who: 'rosa', what: 'POST /api/crops/bacopa/profiles/2/adoption' },
    { id: 7, at: '2026-11-27T07:00:00Z', who: 'rosa', what: 'POST /api/houses/GONE-1' },
  ];
  let fails = false;
  await page.route('**/api/setup-changes?*', (route) => {
    if (fails) return route.fulfill({ status: 500, json: { status: 500, code: 'internal' } });
    const text = new URL(route.request().url()).searchParams.get('text') ?? '';
    return route.fulfill({ json: changes.filter(({ who, what }) => `${who} ${what}`.includes(text)) });
  });
  await page.goto('/setup/audit');
  await page.getByRole('link', { name: 'Changes', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Changes of the set-up');
  await expect(page.getByRole('row', { name: /ana house changed Tarrowmere 1, rooting/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /rosa profile adopted Bacopa, version 2/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /rosa house made GONE-1/ })).toBeVisible();
  await expect(page.getByText('/api/')).toHaveCount(0);
  await expectAccessible(page);
  await page.getByRole('searchbox', { name: 'Find a person or a code' }).fill('ana');
  await expect(page.getByRole('rowheader')).toHaveCount(1);
  await page.getByRole('searchbox', { name: 'Find a person or a code' }).fill('nobody');
  await expect(page.getByText('No change by that name.')).toBeVisible();
  fails = true;
  await page.reload();
  await expect(page.getByRole('button', { name: 'Try again' })).toBeVisible();
  await expectAccessible(page);
});

test('one person’s screen is accessible, and nobody switches themselves off', async ({ page }) => {
  await asOwner(page);
  await page.goto('/setup/people/rosa');
  await expect(page.getByText('This is you: another owner can switch you off.')).toBeVisible();
  await expectAccessible(page);
});

test('the first start marks every field that is wrong', async ({ page }) => {
  await page.route('**/api/about', async (route) => {
    const about = (await (await route.fetch()).json()) as object;
    await route.fulfill({ json: { ...about, demo: false, needsOwner: true } });
  });
  await page.route('**/api/session', (route) => route.fulfill({ status: 401, json: { status: 401 } }));
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('First start');
  await page.getByLabel('One-time secret').fill('AB-12');
  await page.keyboard.press('Enter');
  await expect(page.getByText('This is needed.')).toHaveCount(3);
  await expectAccessible(page);
});
