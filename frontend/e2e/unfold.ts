import type { Page } from '@playwright/test';

/** Opens every house of a round on a phone, where all but the next are folded. */
export async function unfoldHouses(page: Page): Promise<void> {
  await page.locator('.round-house').first().waitFor();
  const folded = page.locator('.round-house > details:not([open]) > summary');
  while (await folded.count()) await folded.first().tap();
  // Back to where a reader begins: further down a button may lie half under the head of its house.
  await page.evaluate(() => scrollTo(0, 0));
}
