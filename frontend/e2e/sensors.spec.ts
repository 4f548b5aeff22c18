import { expect, test, type Page } from '@playwright/test';
import type { House } from '../src/shared/api-types';
import type { Sensor } from '../src/shared/climate-types';
import { expectAccessible, expectAccessibleByDayAndNight } from './accessible';
import { givenIngest } from './given-ingest';

/** The sensor map, CSV import and what came in, against the demo. */

async function get<T>(page: Page, path: string): Promise<T> {
  const answer = await page.request.get(path);
  expect(answer.ok(), path).toBe(true);
  return (await answer.json()) as T;
}

const newCode = () => `PROBE-${Date.now()}`;

async function aHouse(page: Page): Promise<House> {
  const house = (await get<readonly House[]>(page, '/api/houses')).at(-1);
  if (!house) throw new Error('the demo has no house');
  return house;
}

/** Chooses in a combo box as people do: by typing the word. */
async function choose(page: Page, label: string, word: string): Promise<void> {
  const box = page.getByRole('combobox', { name: label });
  await box.fill(word);
  await page.getByRole('option', { name: word, exact: true }).click();
}

async function aSensor(page: Page, quantity = 'air-temperature', unit = '[degF]'): Promise<Sensor> {
  const code = newCode();
  const sensor = { code, house: (await aHouse(page)).code, quantity, unit, topic: `probe/${code}`, offset: -0.5 };
  const answer = await page.request.post('/api/sensors', { data: sensor });
  expect(answer.ok()).toBe(true);
  return sensor as Sensor;
}

test('a sensor is made by the words for what it measures and stored with UCUM codes', async ({ page }) => {
  const code = newCode();
  const house = await aHouse(page);
  await page.goto('/setup/sensors');
  await page.getByRole('button', { name: 'New sensor' }).click();
  await page.getByRole('textbox', { name: 'Code' }).fill(code);
  await choose(page, 'House', house.name);
  await choose(page, 'Measures', 'Light');
  await choose(page, 'Unit', 'fc');
  await choose(page, 'Lit by', 'metal halide');
  await page.getByRole('textbox', { name: 'Topic' }).fill(`probe/${code}`);
  await page.getByRole('textbox', { name: 'Offset (fc)' }).fill('-12,5');
  await page.getByRole('button', { name: 'Save' }).click();

  const row = page.getByRole('row').filter({ has: page.getByRole('link', { name: code }) });
  await expect(row).toContainText(house.name);
  await expect(row).toContainText('−12.5 fc');
  await expect(row).toContainText('nothing kept');
  expect(await get<Sensor>(page, `/api/sensors/${code}`)).toEqual({
    code,
    house: house.code,
    quantity: 'light',
    unit: 'lm/[sft_i]',
    topic: `probe/${code}`,
    offset: -12.5,
    lightSource: 'metal-halide',
    levels: null,
  });
});

test('a moisture probe asks what it shows at each of the five levels', async ({ page }) => {
  const code = newCode();
  await page.goto('/setup/sensors/~new');
  await page.getByRole('textbox', { name: 'Code' }).fill(code);
  await choose(page, 'House', (await aHouse(page)).name);
  await choose(page, 'Measures', 'Medium moisture');
  await choose(page, 'Unit', 'kPa');
  for (const [level, shows] of [60, 30, 15, 8].entries())
    await page.getByRole('textbox', { name: `Shown at moisture level ${level + 1} (kPa)` }).fill(String(shows));
  const wettest = page.getByRole('textbox', { name: 'Shown at moisture level 5 (kPa)' });
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(wettest).toHaveAttribute('aria-invalid', 'true');
  await wettest.fill('9');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('alert')).toContainText('each higher or each lower');
  await expect(wettest).toHaveValue('9');
  await expectAccessible(page);
  await wettest.fill('2');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('link', { name: code })).toBeVisible();
  expect((await get<Sensor>(page, `/api/sensors/${code}`)).levels).toEqual([60, 30, 15, 8, 2]);
});

test('a sensor is changed where its address leads, and seen with its offset', async ({ page }) => {
  const sensor = await aSensor(page);
  await page.request.post('/api/readings', {
    data: [{ ...sensor, sensor: sensor.code, value: 70.5, at: new Date(Date.now() - 60_000).toISOString() }].map(
      ({ house, quantity, value, unit, at, sensor: by }) => ({ house, quantity, value, unit, at, sensor: by }),
    ),
  });
  await page.goto(`/setup/sensors/${sensor.code}`);
  await expect(page.getByRole('combobox', { name: 'Unit' })).toHaveValue('°F');
  await page.getByRole('textbox', { name: 'Offset (°F)' }).fill('0.25');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page).toHaveURL(/\/setup\/sensors$/);
  const row = page.getByRole('row').filter({ has: page.getByRole('link', { name: sensor.code }) });
  await expect(row).toContainText('+0.25 °F');
  // 70.5 °F less half a degree is 70 °F, 21.1 °C.
  await expect(row).toContainText('21.1 °C');
  expect(await get<Sensor>(page, `/api/sensors/${sensor.code}`)).toMatchObject({ unit: '[degF]', offset: 0.25 });
});

test('a unit that the quantity does not come in is refused beside the field, and nothing typed is lost', async ({
  page,
}) => {
  const sensor = await aSensor(page);
  await page.goto(`/setup/sensors/${sensor.code}`);
  await choose(page, 'Measures', 'Light');
  await page.getByRole('button', { name: 'Save' }).click();
  const unit = page.locator('vaadin-combo-box').filter({ has: page.getByRole('combobox', { name: 'Unit' }) });
  await expect(unit).toContainText('This quantity does not come in that unit.');
  await expect(page.getByRole('combobox', { name: 'Unit' })).toHaveValue('°F');
  expect(await get<Sensor>(page, `/api/sensors/${sensor.code}`)).toMatchObject({ quantity: 'air-temperature' });
});

test('what the server refuses stands beside its field too', async ({ page }) => {
  const other = await aSensor(page);
  await page.goto(`/setup/sensors/~new?topic=${encodeURIComponent(other.topic ?? '')}`);
  await page.getByRole('textbox', { name: 'Code' }).fill(newCode());
  await choose(page, 'House', (await aHouse(page)).name);
  await choose(page, 'Measures', 'Humidity');
  await expect(page.getByRole('combobox', { name: 'Unit' })).toHaveValue('%');
  await page.getByRole('button', { name: 'Save' }).click();
  const topic = page.locator('vaadin-text-field').filter({ has: page.getByRole('textbox', { name: 'Topic' }) });
  await expect(topic).toContainText(`${other.code} has this already`);
});

const minutesAgo = (minutes: number) => new Date(Date.now() - minutes * 60_000).toISOString().slice(0, 16) + ':00Z';

async function chooseTable(page: Page, csv: string): Promise<void> {
  await page.goto('/setup/readings');
  await page
    .getByLabel('Choose a file')
    .first()
    .setInputFiles({ name: 'logger.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
  await expect(page.getByText(/^logger\.csv · /)).toBeVisible();
}

test('a CSV import is looked at first, and taken in only then', async ({ page }) => {
  const sensor = await aSensor(page);
  const posts: string[] = [];
  page.on('request', (request) => {
    if (request.method() === 'POST') posts.push(new URL(request.url()).search);
  });
  await chooseTable(
    page,
    `when;${sensor.code};note\n${minutesAgo(50)};70,5;dry\n${minutesAgo(40)};wet;\n${minutesAgo(30)};900;\n`,
  );
  await expect(page.getByLabel('Between columns')).toHaveValue(';');
  await expect(page.getByLabel('Decimal sign')).toHaveValue(',');
  await expect(page.getByLabel('Column of the time')).toHaveValue('when');
  await expect(page.getByLabel(`What ${sensor.code} is`)).toHaveValue(`sensor ${sensor.code}`);
  await expect(page.getByLabel('What note is')).toHaveValue('none');
  await page.getByRole('button', { name: 'Preview' }).click();

  const preview = page.getByRole('region', { name: '3 · What would be imported' });
  await expect(preview).toContainText('Nothing is imported yet.');
  await expect(preview.getByRole('row', { name: /cannot be read/ })).toContainText('not imported');
  await expect(preview.getByRole('row', { name: /out of range/ })).toContainText('set aside');
  expect(posts).toEqual(['?dryRun=true']);
  const readings = `/api/sensors/${sensor.code}/readings`;
  expect((await get<{ readings: unknown[] }>(page, readings)).readings).toEqual([]);

  await page.getByRole('button', { name: 'Import 1 reading' }).click();
  await expect(page.getByRole('heading', { name: '1 reading imported' })).toBeVisible();
  expect(posts).toEqual(['?dryRun=true', '?dryRun=false']);
  expect((await get<{ readings: unknown[] }>(page, readings)).readings).toMatchObject([{ sent: 70.5, unit: '[degF]' }]);

  await page.getByRole('button', { name: 'Another table' }).click();
  await expect(page.getByRole('heading', { name: '1 · The table' })).toBeVisible();
});

test('a table may be pasted, and its first lines show how it is cut', async ({ page }) => {
  await page.goto('/setup/readings');
  await page.getByRole('textbox', { name: 'or paste it here' }).fill('when\tair\n2026-11-20T08:00:00Z\t21.5\n');
  await expect(page.getByRole('heading', { name: '1 · The table' })).toBeFocused();
  await expect(page.getByText('pasted text · 2 columns')).toBeVisible();
  await expect(page.getByLabel('Between columns')).toHaveValue('\t');
  await page.getByLabel('Between columns').selectOption(',');
  await expect(page.getByText('pasted text · 1 column')).toBeVisible();
});

test('what a table leaves open is asked for beside the field, and a change asks for another look', async ({ page }) => {
  const house = await aHouse(page);
  await chooseTable(page, 'when,medium\n03/04/2026 08:00,21.5\n03/04/2026 08:10,21.6\n');
  await page.getByRole('button', { name: 'Preview' }).click();
  const time = page.locator('.table-choice').filter({ has: page.getByLabel('A time looks like') });
  await expect(time).toContainText('This is needed.');
  await expect(page.getByText('Say of at least one column what it is.')).toBeVisible();

  await page.getByLabel('A time looks like').selectOption({ label: '09/03/2026 08:05 (day first)' });
  await page.getByLabel('Times are those of').selectOption('America/New_York');
  await page.getByLabel('What medium is').selectOption('house');
  await page.getByLabel('House of medium').selectOption(house.code);
  await page.getByLabel('What medium measures').selectOption('light');
  await page.getByLabel('Unit of medium').selectOption('lx');
  await page.getByLabel('What medium measures').selectOption('medium-temperature');
  await page.getByRole('button', { name: 'Preview' }).click();
  await expect(page.getByText('This quantity does not come in that unit.')).toBeVisible();
  await page.getByLabel('Unit of medium').selectOption('Cel');
  await page.getByRole('button', { name: 'Preview' }).click();
  await expect(page.getByRole('button', { name: /^Import \d/ })).toBeVisible();
  await page.getByLabel('Decimal sign').selectOption(',');
  await expect(page.getByText('preview it again')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Import \d/ })).toHaveCount(0);
});

test('a server that does not answer loses nothing: the same table is taken once', async ({ page, context }) => {
  const sensor = await aSensor(page);
  await chooseTable(page, `when,${sensor.code}\n${minutesAgo(20)},70.5\n`);
  await page.getByRole('button', { name: 'Preview' }).click();
  await expect(page.getByRole('button', { name: 'Import 1 reading' })).toBeVisible();
  await context.setOffline(true);
  await page.getByRole('button', { name: 'Import 1 reading' }).click();
  await expect(page.getByText(/The server does not answer/)).toBeVisible();
  await context.setOffline(false);
  await page.getByRole('button', { name: 'Import 1 reading' }).click();
  await expect(page.getByRole('heading', { name: '1 reading imported' })).toBeVisible();
});

test('what came in is counted by way with the reasons of what is not stored', async ({ page }) => {
  const house = await aHouse(page);
  const at = new Date().toISOString();
  await page.request.post('/api/readings', {
    data: [{ house: house.code, quantity: 'medium-temperature', value: -127, unit: 'Cel', at }],
  });
  await page.goto('/setup/ingest');
  await expect(page.getByRole('row', { name: /^by HTTP/ }).first()).toContainText('▲');
  await expect(page.getByRole('row', { name: /^out of range by HTTP/ })).toContainText(
    'must lie between -10.0 °C and 60.0 °C',
  );
});

test('a topic that no sensor has opens the form of a new one', async ({ page }) => {
  await givenIngest(page);
  await page.goto('/setup/ingest');
  await expect(page.getByRole('row', { name: /^by MQTT/ })).toContainText('12,480');
  await expect(page.getByRole('row', { name: /^range\/7\/air/ })).toContainText('16');
  await page.getByRole('link', { name: 'Make a sensor of range/7/air' }).click();
  await expect(page.getByRole('heading', { name: 'New sensor' })).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Topic' })).toHaveValue('range/7/air');
});

test('what could not be loaded is said, with a way to try again', async ({ page }) => {
  await page.route('**/api/ingest', (route) => route.abort());
  await page.goto('/setup/ingest');
  await expect(page.getByText('This could not be loaded')).toBeVisible();
  await page.unroute('**/api/ingest');
  await givenIngest(page);
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('heading', { name: 'By way in' })).toBeVisible();
});

/** Every state of these screens that there is something to see in. */
async function walk(page: Page, look: (name: string) => Promise<void>): Promise<void> {
  await page.goto('/setup/sensors');
  await expect(page.locator('main').getByText(/°C/).first()).toBeVisible();
  await look('list');
  await page.goto('/setup/sensors/~new');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('This is needed.').first()).toBeVisible();
  await look('form');
  await page.goto('/setup/readings');
  await expect(page.getByRole('heading', { name: '1 · The table' })).toBeVisible();
  await look('table-source');
  const house = await aHouse(page);
  await chooseTable(page, `when,air,extra\n${minutesAgo(50)},21.5,\n${minutesAgo(40)},wet,\n${minutesAgo(30)},900,\n`);
  await page.getByLabel('What air is').selectOption('house');
  await page.getByRole('button', { name: 'Preview' }).click();
  await expect(page.getByText('This is needed.').first()).toBeVisible();
  await look('table-plan');
  await page.getByLabel('House of air').selectOption(house.code);
  await page.getByLabel('What air measures').selectOption('ec');
  await page.getByLabel('Unit of air').selectOption('uS/cm');
  await page.getByRole('button', { name: 'Preview' }).click();
  await expect(page.getByRole('button', { name: /^Import \d/ })).toBeVisible();
  await look('table-preview');
  await givenIngest(page);
  await page.goto('/setup/ingest');
  await expect(page.getByRole('heading', { name: 'By way in' })).toBeVisible();
  await look('ingest');
  await page.unroute('**/api/ingest');
}

test('passes the accessibility rules by day and by night', async ({ page }) => {
  await walk(page, async (name) => {
    await test.step(name, () => expectAccessibleByDayAndNight(page));
  });
});

test('fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await walk(page, async (name) => {
    const widths = await page.evaluate(() =>
      [document.documentElement, ...document.querySelectorAll('main')].map((each) => each.scrollWidth),
    );
    expect(Math.max(...widths), name).toBeLessThanOrEqual(390);
    await test.step(name, () => expectAccessible(page));
  });
});
