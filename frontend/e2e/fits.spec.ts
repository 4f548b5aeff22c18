import { expect, test, type Browser, type Page } from '@playwright/test';
import type { BatchList } from '../src/shared/api-types';

/**
 * Every screen on the devices it is made for, in the longer of the two languages: the bar stays one line, nothing is cut,
 * nothing hangs out of the screen, no part has to be pushed sideways to be read, and all is in the reader's words and units.
 */

const HEADER_PX = 56;

interface Device {
  /** Those of the United States read °F, inches and foot-candles. */
  readonly locale: 'es-MX' | 'es-US' | 'en-US';
  readonly door: 'sales' | 'production' | 'manager';
  readonly width: number;
  readonly height: number;
  readonly touch: boolean;
}

const DEVICES: Readonly<Record<string, Device>> = {
  phone: { locale: 'es-MX', door: 'manager', width: 390, height: 844, touch: true },
  tablet: { locale: 'es-US', door: 'manager', width: 820, height: 1180, touch: true },
  desk: { locale: 'es-MX', door: 'sales', width: 1440, height: 900, touch: false },
};

/** What may be pushed sideways: a sheet of weeks, and the text of a file as it came. */
const MAY_SCROLL = '.bg-scroll, .board-grid, [role="grid"], .csv-sample, .table-text';

interface Measured {
  readonly headerPx: number;
  readonly pagePx: number;
  readonly cut: readonly string[];
  readonly sideways: readonly string[];
}

function measure(page: Page): Promise<Measured> {
  return page.evaluate((mayScroll) => {
    const cut: string[] = [];
    const sideways: string[] = [];
    const said = (element: Element) =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} "${(element.textContent ?? '').trim().slice(0, 40)}"`;
    // Told once, of what has to be pushed.
    const inScroller = (element: Element | null): boolean =>
      element !== null &&
      (/auto|scroll/.test(getComputedStyle(element).overflowX) || inScroller(element.parentElement));
    for (const element of document.querySelectorAll('header.top *, main *')) {
      const box = element.getBoundingClientRect();
      const style = getComputedStyle(element);
      if (box.width <= 2 || style.visibility === 'hidden' || element.closest('.rc-hidden, .uplot')) continue;
      const tooWide = element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 2;
      const words = [...element.childNodes].some(({ nodeType, textContent }) => nodeType === 3 && textContent?.trim());
      if (
        tooWide &&
        /hidden|clip/.test(style.overflowX) &&
        (words || element.querySelector(':scope > span, :scope > a'))
      )
        cut.push(said(element));
      if (element.matches('h1, .batch-card, .batch-row > div') && element.scrollHeight > element.clientHeight + 1)
        cut.push(`below: ${said(element)}`);
      if (tooWide && /auto|scroll/.test(style.overflowX) && !element.matches(mayScroll)) sideways.push(said(element));
      if (words && box.right > innerWidth + 1 && !inScroller(element)) cut.push(`outside: ${said(element)}`);
    }
    return {
      headerPx: document.querySelector('header.top')?.getBoundingClientRect().height ?? 0,
      pagePx: document.documentElement.scrollWidth,
      cut,
      sideways,
    };
  }, MAY_SCROLL);
}

/** What no reader may see: raw instants, codes and fields as they are sent, figures that came to nothing. */
const RAW = [
  /\d{4}-\d{2}-\d{2}T\d{2}/,
  /undefined|NaN|\bnull\b|\[object|Invalid Date/,
  /\b(STICK|CALLUS|ROOT|READY|STICKING|ROOTING|FILLING|TONING|RUNNING|WEANING)\b/,
  /\b[a-z]+(Ppm|Kpa|Umol|Mm|Percent|MsPerCm|SetpointC)\b|\b(air|medium|leaf)C\b/,
  /(?<![\d.,] ?)\b1 (batches|plants|trays|weeks|days|lotes|plantas|charolas|semanas|días)\b/,
];
const OF_OTHERS = {
  'es-MX': [/°F|\bfc\b/, /\b(Board|Batches|Climate|Rounds|Warnings|Treatments|alive|trays|weeks|house)\b/],
  'es-US': [/°C|µmol\/m²\/s/, /\b(Board|Batches|Climate|Rounds|Warnings|Treatments|alive|trays|weeks|house)\b/],
  'en-US': [/°C|µmol\/m²\/s/, /\b(charolas?|lotes?|invernaderos?|plantas|semanas?|vivas)\b/],
} as const;
/** Where a reader chooses among units, and what people wrote or files hold. */
const NOT_READ = '.preferences, select, option, textarea, .csv-sample, .table-text';

/** Lines of a screen that are in no reader's words, or in another's. */
async function raw(page: Page, locale: Device['locale']): Promise<string[]> {
  const lines = await page.evaluate((notRead) => {
    const copy = document.querySelector('main')?.cloneNode(true) as HTMLElement;
    copy.querySelectorAll(notRead).forEach((each) => each.remove());
    const walk = document.createTreeWalker(copy, NodeFilter.SHOW_TEXT);
    const texts = [...copy.querySelectorAll('[aria-label]')].map((each) => each.getAttribute('aria-label') ?? '');
    while (walk.nextNode()) texts.push(walk.currentNode.textContent ?? '');
    return [...new Set(texts)];
  }, NOT_READ);
  // A sensor is listed with the unit that it sends.
  if (new URL(page.url()).pathname === '/setup/sensors')
    return lines.filter((line) => RAW.some((bad) => bad.test(line)));
  return lines.filter((line) => [...RAW, ...OF_OTHERS[locale]].some((pattern) => pattern.test(line)));
}

async function on(browser: Browser, { locale, door, width, height, touch }: Device) {
  const context = await browser.newContext({
    viewport: { width, height },
    hasTouch: touch,
    isMobile: touch,
    locale,
    storageState: { cookies: [], origins: [] },
  });
  expect((await context.request.post('/api/session/door', { data: { door } })).status()).toBe(204);
  const { batches } = (await (await context.request.get('/api/batches?state=live')).json()) as BatchList;
  const batch = batches.find(({ stage, outlook }) => stage === 'ROOT' && outlook);
  if (!batch) throw new Error('the demo has no rooted batch');
  const tomorrow = new Date(Date.now() + 86_400_000).toISOString();
  const setUp = [
    '/what-if',
    `/what-if?set=${batch.house}~17~${tomorrow}`,
    `/batches/${batch.id}?asOf=${new Date(Date.now() - 5 * 86_400_000).toISOString()}`,
    '/setup/sites',
    '/setup/houses',
    '/setup/crops',
    '/setup/varieties',
    '/setup/sensors',
    `/setup/crops/${batch.crop}`,
    `/setup/crops/${batch.crop}/profiles`,
    `/setup/crops/${batch.crop}/recipe`,
    '/setup/readings',
    '/setup/batches',
    '/setup/ingest',
    '/setup/first-day',
    '/floor',
    `/floor?site=${batch.site}&batch=${batch.id}`,
  ];
  const paths = [
    '/board',
    '/batches',
    `/batches/${batch.id}`,
    '/climate',
    `/climate/${batch.house}`,
    `/rounds?site=${batch.site}`,
    '/warnings',
    '/treatments',
    '/feed',
    '/track-record',
    '/account/password',
    '/account/sessions',
    '/nowhere',
    ...(door === 'manager' ? setUp : []),
  ];
  return { context, paths };
}

/** Opens a screen and waits until all of it is there. */
async function come(page: Page, path: string): Promise<void> {
  await page.goto(path);
  await expect(page.locator('main .rc-loading, main [aria-busy="true"]')).toHaveCount(0);
  await expect(page.locator('header.top h1')).not.toBeEmpty();
  await page.waitForLoadState('networkidle', { timeout: 2_000 }).catch(() => undefined);
}

for (const [name, device] of Object.entries(DEVICES)) {
  test(`nothing is cut or hangs out on a ${name}, and its bar is one line`, async ({ browser }) => {
    const { context, paths } = await on(browser, device);
    const page = await context.newPage();
    const faults: string[] = [];
    for (const path of paths) {
      await come(page, path);
      const { headerPx, pagePx, cut, sideways } = await measure(page);
      if (headerPx > HEADER_PX) faults.push(`${path}: the bar is ${headerPx} px high`);
      if (pagePx > device.width) faults.push(`${path}: the page is ${pagePx} px wide`);
      faults.push(...(await raw(page, device.locale)).map((each) => `${path}: raw ${each.slice(0, 90)}`));
      faults.push(...cut.map((each) => `${path}: cut ${each}`), ...sideways.map((each) => `${path}: sideways ${each}`));
    }
    expect(faults).toEqual([]);
    await context.close();
  });
}

test('a reader of English and °F reads nothing raw and nothing of another’s', async ({ browser }) => {
  const device: Device = { locale: 'en-US', door: 'manager', width: 1440, height: 900, touch: false };
  const { context, paths } = await on(browser, device);
  const page = await context.newPage();
  const faults: string[] = [];
  for (const path of paths) {
    await come(page, path);
    faults.push(...(await raw(page, device.locale)).map((each) => `${path}: ${each.slice(0, 90)}`));
  }
  expect(faults).toEqual([]);
  // The month comes first.
  await page.goto('/board');
  await expect(page.locator('.bg-week-day').first()).toHaveText(/^[A-Z][a-z]{2} \d/);
  await context.close();
});

test('on a tablet the page of a batch has two columns beside the side menu', async ({ browser }) => {
  const { context, paths } = await on(browser, DEVICES['tablet'] as Device);
  const page = await context.newPage();
  await page.goto(paths.find((path) => path.startsWith('/batches/')) ?? '');
  await expect(page.locator('nav.rooms')).toBeVisible();
  const [left, right] = [page.locator('#outlook'), page.locator('#story')];
  await expect(right).toBeVisible();
  const boxes = [await left.boundingBox(), await right.boundingBox()];
  expect(boxes[1]?.x ?? 0).toBeGreaterThan((boxes[0]?.x ?? 0) + (boxes[0]?.width ?? 0) - 1);
  await context.close();
});

test('what is typed into on a tablet is as high as what is pressed', async ({ browser }) => {
  const { context } = await on(browser, DEVICES['tablet'] as Device);
  const page = await context.newPage();
  await page.goto('/feed');
  await expect(page.locator('main input').first()).toBeVisible();
  const heights = await page
    .locator('main vaadin-text-field')
    .evaluateAll((fields) =>
      fields.map(
        (field) => field.shadowRoot?.querySelector('[part="input-field"]')?.getBoundingClientRect().height ?? 0,
      ),
    );
  expect(heights.length).toBeGreaterThan(3);
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
  await context.close();
});

test('on a phone a round is folded by house, and the menu closes on choosing', async ({ browser }) => {
  const { context, paths } = await on(browser, DEVICES['phone'] as Device);
  const page = await context.newPage();
  await page.goto(paths.find((path) => path.startsWith('/rounds')) ?? '');
  const houses = page.locator('.round-house');
  await expect(houses.first()).toBeVisible();
  expect(await houses.count()).toBeGreaterThan(1);
  await expect(houses.first().locator('.round-item').first()).toBeVisible();
  await expect(houses.nth(1).locator('.round-item')).toHaveCount(0);
  await houses.nth(1).locator('summary').first().tap();
  await expect(houses.nth(1).locator('.round-item').first()).toBeVisible();

  const menu = page.getByRole('dialog', { name: 'Menú' });
  await page.getByRole('button', { name: 'Menú' }).tap();
  await expect(menu).toBeVisible();
  await page.getByRole('link', { name: 'Ronda' }).tap();
  await expect(menu).toBeHidden();

  // By keyboard too, and the focus goes back to where it came from.
  await page.getByRole('button', { name: 'Menú' }).press('Enter');
  await expect(menu).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(menu).toBeHidden();
  await expect(page.getByRole('button', { name: 'Menú' })).toBeFocused();
  await context.close();
});
