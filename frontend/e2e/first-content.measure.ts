import { test, type BrowserContext, type Page } from '@playwright/test';
import type { BatchList, House } from '../src/shared/api-types';

/**
 * How soon each screen of the demo shows what it is opened for, on a processor four times slower. Reported, not judged.
 * The page itself tells when that was drawn, from the moment at which it was asked for: a test that looks in from outside first has
 * its own program read by the slowed page.
 */

const SLOWDOWN = 4;
const VISITS = 3;
const BUTTON = 'main :is(button, [role=button])';
const TOLD = 'first content after ';

async function get<T>(page: Page, path: string): Promise<T> {
  return (await (await page.request.get(path)).json()) as T;
}

/** Runs in the page, before its own program. */
function tellFirstContent([content, told]: readonly [string, string]): void {
  const look = (): void => {
    const found = document.querySelector(content);
    // The frame after the one in which it is there has drawn it.
    if (found && found.getClientRects().length > 0)
      requestAnimationFrame(() => setTimeout(() => console.log(told + Math.round(performance.now()))));
    else requestAnimationFrame(look);
  };
  look();
}

interface Visit {
  readonly tookMs: number;
  /** Of the page's own thread: what other work beside it does not change. */
  readonly processorMs: number;
}

/** The first visit fetches the code; a screen of every day has it. */
async function visits(
  context: BrowserContext,
  path: string,
  content: string,
  slowdown: number,
): Promise<readonly Visit[]> {
  const page = await context.newPage();
  await page.addInitScript(tellFirstContent, [content, TOLD] as const);
  const tools = await context.newCDPSession(page);
  await tools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  await tools.send('Performance.enable', { timeDomain: 'threadTicks' });
  const all: Visit[] = [];
  for (let visit = 0; visit <= VISITS; visit++) {
    await page.goto('about:blank');
    const told = page.waitForEvent('console', (message) => message.text().startsWith(TOLD));
    await page.goto(path, { waitUntil: 'commit' });
    const tookMs = Number((await told).text().slice(TOLD.length));
    const { metrics } = await tools.send('Performance.getMetrics');
    const seconds = metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN;
    all.push({ tookMs, processorMs: Math.round(seconds * 1_000) });
    // What comes later is fetched when nothing else is to be done.
    await page.evaluate(() => new Promise((done) => requestIdleCallback(done, { timeout: 5_000 })));
  }
  await page.close();
  return all;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}

test('first useful content of each screen', async ({ page, context }) => {
  test.setTimeout(1_200_000);
  const { batches } = await get<BatchList>(page, '/api/batches?state=live');
  const [batch] = batches;
  const house = (await get<readonly House[]>(page, '/api/houses')).find(({ code }) => code === batch?.house);
  const screens: readonly (readonly [name: string, path: string, content: string])[] = [
    ['Board', '/board', '[role=gridcell]'],
    ['Floor', `/floor?site=${batch?.site}`, '.floor button'],
    ['a batch on Floor', `/floor?batch=${batch?.id}`, '.figure-main'],
    ['Batches', '/batches', '[role=gridcell]'],
    ['a batch', `/batches/${batch?.id}`, '.head-figures dd'],
    ['Climate', '/climate', 'main td'],
    ['a house', `/climate/${house?.code}`, 'main section h2'],
    ['Rounds', `/rounds?site=${batch?.site}`, '.round-house h2'],
    ['Warnings', '/warnings', 'main h2, main li'],
    ['Treatments', '/treatments', `${BUTTON}, main td`],
    ['Feed', '/feed', 'main input'],
    ['What if', '/what-if', BUTTON],
    ['Track record', '/track-record', 'main table, main figure'],
    ['Setup', '/setup', 'main a'],
    ['Sensors', '/setup/sensors', 'main td'],
  ];
  for (const [name, path, content] of screens) {
    const [first, ...again] = await visits(context, path, content, SLOWDOWN);
    const [, ...free] = await visits(context, path, content, 1);
    const later = median(again.map(({ tookMs }) => tookMs));
    const processor = median(free.map(({ processorMs }) => processorMs));
    console.log(`${name}: first visit ${first?.tookMs} ms, later ${later} ms; not slowed, processor ${processor} ms`);
  }
});
