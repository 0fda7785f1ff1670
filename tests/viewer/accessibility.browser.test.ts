import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSite, SCREENSHOTS, type Site } from '../support/page.ts';
import { readVerdict } from '../support/verdict.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => site.close());

/** Findings that would shut somebody out. */
async function seriousFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}

/** States of the page, each reached from the one before. */
const STATES: readonly (readonly [name: string, reach: (page: Page) => Promise<unknown>])[] = [
  ['bench', async () => {}],
  ['set-selected', async (page) => page.getByRole('treeitem', { name: /^outer/ }).click()],
  ['area-histogram', async (page) => page.getByRole('tab', { name: 'Area by thickness' }).click()],
  ['contributions', async (page) => page.getByRole('tab', { name: 'Filaments at the probe' }).click()],
  ['face-on', async (page) => page.getByRole('tab', { name: 'Face on' }).click()],
  ['variants-empty', async (page) => page.getByRole('tab', { name: 'Variants' }).click()],
  [
    'variants',
    async (page) => {
      await page.getByRole('button', { name: /^Pin/ }).click();
      await page.getByLabel('Preset').selectOption({ index: 1 });
      await page.getByRole('region', { name: 'Comparison' }).getByRole('img').first().waitFor();
    },
  ],
  ['export-menu', async (page) => page.getByRole('button', { name: 'Export' }).click()],
  [
    'keys',
    async (page) => {
      await page.keyboard.press('Escape');
      await page.locator('h1').click();
      await page.keyboard.press('?');
      await page.getByRole('dialog').waitFor();
    },
  ],
  [
    'assumptions',
    async (page) => {
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Assumptions' }).click();
      await page.getByRole('dialog').waitFor();
    },
  ],
];

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  test('no state of the page has a serious finding', async () => {
    const { page, complaints } = await site.open({ theme });
    await readVerdict(page);
    for (const [name, reach] of STATES) {
      await reach(page);
      await page.waitForTimeout(300);
      expect([name, await seriousFindings(page)]).toEqual([name, []]);
      await page.screenshot({ path: join(SCREENSHOTS, `${name}-${theme}-1440x900.png`) });
    }
    expect(complaints).toEqual([]);
  });
});
