import { join } from 'node:path';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSite, SCREENSHOTS, type Site } from '../support/page.ts';
import { nextVerdict, readVerdict, textOf, verdict } from '../support/verdict.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => site.close());

const part = (page: Page, name: RegExp): Locator => page.getByRole('treeitem', { name });

/** Opens a branch of the tree of parts by its key. */
async function openBranch(page: Page, name: RegExp): Promise<void> {
  await part(page, name).first().click();
  await page.keyboard.press('ArrowRight');
}

describe('on the bench', () => {
  test('three filaments fail: selected in the tree, one key, and the coat answers', async () => {
    const { page, complaints } = await site.open();
    const first = await readVerdict(page);
    await openBranch(page, /^outer/);
    await part(page, /^outer 1\b/).click();
    for (const name of [/^outer 2\b/, /^outer 3\b/]) await part(page, name).click({ modifiers: ['Control'] });
    await page.keyboard.press('x');
    const failed = await nextVerdict(page, first);
    expect(failed).not.toBe(first);
    for (const name of [/^outer 1\b/, /^outer 2\b/, /^outer 3\b/])
      expect(await textOf(part(page, name))).toMatch(/out of use/);
    expect(await textOf(part(page, /^outer 4\b/))).not.toMatch(/out of use/);
    await page.screenshot({ path: join(SCREENSHOTS, 'three-failed-1440x900.png') });
    await page.keyboard.press('x');
    expect(await nextVerdict(page, failed)).toBe(first);
    expect(complaints).toEqual([]);
  });

  test('a filament is dragged, which makes single filaments of its ring, and undo brings the ring back', async () => {
    const { page, complaints } = await site.open();
    const first = await readVerdict(page);
    await openBranch(page, /^outer/);
    await part(page, /^outer 1\b/).click();
    const handle = page.locator('[data-handle]').first();
    await handle.waitFor();
    const box = await handle.boundingBox();
    if (!box) throw new Error('expected a handle with a place on screen');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    // away along the handle's own line: it leads from the filament to its label
    for (let i = 1; i <= 8; i++) await page.mouse.move(x - 4 * i, y + 2 * i, { steps: 2 });
    await page.mouse.up();
    await nextVerdict(page, first);
    expect(await textOf(part(page, /^outer/).first())).toMatch(/list/);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => textOf(verdict(page))).toBe(first);
    expect(await textOf(part(page, /^outer/).first())).toMatch(/ring/);
    expect(complaints).toEqual([]);
  });

  test('two selected filaments are dragged together, in one step that undo takes back', async () => {
    const { page, complaints } = await site.open();
    const first = await readVerdict(page);
    await openBranch(page, /^outer/);
    await part(page, /^outer 1\b/).click();
    await part(page, /^outer 3\b/).click({ modifiers: ['Control'] });
    const handle = page.getByRole('spinbutton', { name: 'z of 2 parts' });
    await handle.focus();
    const before = Number(await handle.getAttribute('aria-valuenow'));
    await page.keyboard.press('ArrowUp');
    await expect.poll(async () => Number(await handle.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
    const position = async (name: RegExp): Promise<string> => {
      await part(page, name).click();
      return page.getByRole('group', { name: 'Position' }).getByRole('textbox').last().inputValue();
    };
    expect(await position(/^outer 1\b/)).toBe('0.91 m');
    expect(await position(/^outer 3\b/)).toBe('0.91 m');
    expect(await position(/^outer 2\b/)).toBe('0.9 m');
    await page.getByRole('button', { name: 'Undo: z of 2 parts' }).click();
    await expect.poll(async () => textOf(verdict(page))).toBe(first);
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    expect(complaints).toEqual([]);
  });

  test('pointing at a bar leaves the selection alone, a press selects', async () => {
    const { page } = await site.open();
    await readVerdict(page);
    await part(page, /^outer/).click();
    await page.getByRole('tab', { name: 'Filaments at the probe' }).click();
    const bar = page
      .getByRole('list', { name: /Largest contributions/ })
      .getByRole('button')
      .first();
    const selection = page.getByRole('status', { name: 'Selection' });
    await bar.hover();
    await page.waitForTimeout(200);
    expect(await selection.textContent()).toMatch(/^Selected: outer, 36 filaments/);
    await page.locator('h1').hover();
    expect(await selection.textContent()).toMatch(/^Selected: outer, 36 filaments/);
    await bar.click();
    await expect.poll(async () => selection.textContent()).toMatch(/^Selected: outer \d+,/);
  });

  test('the units that the user chose hold for profile, statistics and probe', async () => {
    const { page } = await site.open();
    await readVerdict(page);
    await page.getByRole('button', { name: 'Units' }).click();
    await page.getByLabel('Lengths').selectOption('in');
    await page.getByLabel('Thickness', { exact: true }).selectOption('Å');
    await page.keyboard.press('Escape');
    expect(await page.getByRole('img', { name: /^Radial profile/ }).getAttribute('aria-label')).toMatch(
      /Å at radius 10\.8 in, .*target 1000 Å/,
    );
    expect(await textOf(page.getByRole('row', { name: /^Minimum/ }))).toMatch(/r 10\.8 in.*695\.6.*Å/);
    expect(await textOf(page.getByRole('group', { name: 'Probe' }))).toMatch(/913\.2 Å/);
  });

  test('colours that begin at zero do so in the tank and face on', async () => {
    const { page } = await site.open();
    await readVerdict(page);
    await page.getByRole('button', { name: 'Show' }).click();
    await page.getByLabel('Colours from zero').check();
    await expect.poll(async () => page.locator('.legend-tick').first().textContent()).toBe('0');
    await page.keyboard.press('Escape');
    await page.getByRole('tab', { name: 'Face on' }).click();
    expect(await page.getByLabel('Colours from zero').isChecked()).toBe(true);
    expect((await page.locator('.map-bar text').allTextContents()).slice(1)).toContain('0');
  });

  test('pin, change, compare: the difference is said in words and drawn', async () => {
    const { page, complaints } = await site.open();
    const first = await readVerdict(page);
    await page.getByRole('button', { name: /^Pin/ }).click();
    await part(page, /^outer/).click();
    const form = page.getByRole('region', { name: /^outer/ });
    await form.getByLabel('Diameter', { exact: true }).fill('2.7 m');
    await page.keyboard.press('Enter');
    await nextVerdict(page, first);
    await page.getByRole('tab', { name: 'Variants' }).click();
    const comparison = page.getByRole('region', { name: 'Comparison' });
    await comparison
      .getByText(/percentage point|even|thinnest/i)
      .first()
      .waitFor();
    expect(await textOf(comparison)).toMatch(/ring outer: diameter 2\.9 m → 2\.7 m/);
    expect(await textOf(page.getByRole('table', { name: /Headline numbers/ }))).toContain('Current design');
    await comparison
      .getByRole('img', { name: /difference/i })
      .first()
      .waitFor();
    await page.screenshot({ path: join(SCREENSHOTS, 'variants-1440x900.png') });
    await comparison.getByRole('button', { name: 'Swap A and B' }).click();
    await expect.poll(async () => textOf(comparison)).toMatch(/diameter 2\.7 m → 2\.9 m/);
    // pinned variants are there again after reloading
    await page.waitForTimeout(1200);
    await page.reload();
    await readVerdict(page);
    await page.getByRole('tab', { name: 'Variants' }).click();
    await expect.poll(async () => textOf(page.getByRole('table', { name: /Headline numbers/ }))).toContain('Tarn Hill');
    expect(complaints).toEqual([]);
  });

  test('the calculation dies, and the page goes on', async () => {
    const { page } = await site.open();
    const first = await readVerdict(page);
    for (const worker of page.workers()) {
      await worker.evaluate(
        () =>
          void setTimeout(() => {
            throw new Error('made to fail by the test');
          }),
      );
    }
    await page.waitForTimeout(200);
    await part(page, /^outer/).click();
    const charge = page.getByRole('region', { name: /^outer/ }).getByLabel('Charge', { exact: true });
    await charge.fill('0.5 g');
    await charge.press('Enter');
    const second = await nextVerdict(page, first);
    expect(second).toMatch(/Average 118 nm/);
  });

  test('the whole way by keyboard', async () => {
    const { page, complaints } = await site.open();
    const first = await readVerdict(page);
    const focused = page.locator(':focus');
    const tabTo = async (isThere: () => Promise<boolean>): Promise<void> => {
      // at first nothing has the focus, so the key comes before the question
      for (let i = 0; i < 60; i++) {
        await page.keyboard.press('Tab');
        if (await isThere()) return;
      }
      throw new Error('the Tab key does not lead there');
    };
    await tabTo(
      async () =>
        (await focused.getAttribute('role')) === 'treeitem' || (await focused.getAttribute('role')) === 'tree',
    );
    await page.keyboard.type('outer');
    await expect.poll(async () => page.getByRole('region', { name: /^outer/ }).count()).toBe(1);
    await tabTo(async () =>
      (await focused.evaluate((input) => (input as HTMLInputElement).labels?.[0]?.textContent ?? '')).startsWith(
        'Height',
      ),
    );
    await page.keyboard.press('ArrowUp');
    const raised = await nextVerdict(page, first);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+z');
    await expect.poll(async () => textOf(verdict(page))).toBe(first);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(async () => textOf(verdict(page))).toBe(raised);
    await tabTo(async () => (await focused.getAttribute('role')) === 'tab');
    await page.keyboard.press('ArrowRight');
    await page.getByRole('tabpanel', { name: 'Face on' }).getByLabel('Quantity').waitFor();
    await page.keyboard.press('?');
    const keys = page.getByRole('dialog');
    await keys.waitFor();
    expect(await textOf(keys)).toMatch(/Undo/);
    await page.keyboard.press('Escape');
    await keys.waitFor({ state: 'hidden' });
    expect(complaints).toEqual([]);
  });
});
