import { test, type Page } from '@playwright/test';
import type { BatchList, House } from '../src/shared/api-types';

/** How soon each screen of the demo shows what it is opened for, on a processor four times slower. Reported, not judged. */

const SLOWDOWN = 4;
const VISITS = 3;

async function get<T>(page: Page, path: string): Promise<T> {
  return (await (await page.request.get(path)).json()) as T;
}

test('first useful content of each screen', async ({ page }) => {
  test.setTimeout(600_000);
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
    ['Treatments', '/treatments', 'main vaadin-button, main td'],
    ['Feed', '/feed', 'main input'],
    ['What if', '/what-if', 'main vaadin-button'],
    ['Track record', '/track-record', 'main table, main figure'],
    ['Setup', '/setup', 'main a'],
    ['Sensors', '/setup/sensors', 'main td'],
  ];
  const processor = await page.context().newCDPSession(page);
  await processor.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  for (const [name, path, content] of screens) {
    const tookMs: number[] = [];
    // The first visit fetches the code; a screen of every day has it.
    for (let visit = 0; visit <= VISITS; visit++) {
      await page.goto('about:blank');
      const began = Date.now();
      await page.goto(path, { waitUntil: 'commit' });
      await page.locator(content).first().waitFor();
      tookMs.push(Date.now() - began);
    }
    const [first, ...again] = tookMs;
    const median = again.sort((a, b) => a - b)[Math.floor(VISITS / 2)];
    console.log(`${name}: first visit ${first} ms, later ${median} ms`);
  }
});
