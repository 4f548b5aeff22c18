import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

const EVERY_RULE = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Nothing against WCAG 2.2 AA on the page as it stands; a failure lists rule and element. */
export async function expectAccessible(page: Page): Promise<void> {
  await expectNoViolation(page, { type: 'tag', values: EVERY_RULE });
}

/** The same in both looks. Only colours differ, so only their rules are asked again in the dark. */
export async function expectAccessibleByDayAndNight(page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' });
  await expectAccessible(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectNoViolation(page, { type: 'rule', values: ['color-contrast', 'link-in-text-block'] });
  await page.emulateMedia({ colorScheme: 'light' });
}

/**
 * What passes is not listed: on a page of many rows that is most of the work. The dialog over the board keeps colours of
 * neither look for some time after the change even when nothing moves any more, and why is not known: so a page is looked
 * at again for a while. One that is at fault stays so.
 */
async function expectNoViolation(page: Page, runOnly: { type: 'tag' | 'rule'; values: string[] }): Promise<void> {
  await expect(async () => {
    await still(page);
    const { violations } = await new AxeBuilder({ page }).options({ runOnly, resultTypes: ['violations'] }).analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(' | ')}`),
    ).toEqual([]);
  }).toPass({ timeout: 15_000, intervals: [500] });
}

/**
 * Waits until the page has been drawn in its new look and no colour is on its way to another: halfway a colour is
 * neither the one by day nor the one by night.
 */
async function still(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const drawn = () => new Promise((next) => requestAnimationFrame(next));
    const moving = (root: Document | ShadowRoot): Animation[] => [
      ...root.getAnimations(),
      ...[...root.querySelectorAll('*')].flatMap(({ shadowRoot }) => (shadowRoot ? moving(shadowRoot) : [])),
    ];
    await drawn();
    await drawn();
    const ending = moving(document).filter(({ effect }) => Number.isFinite(effect?.getComputedTiming().endTime));
    await Promise.allSettled(ending.map(({ finished }) => finished));
    await drawn();
  });
}
