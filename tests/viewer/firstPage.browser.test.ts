import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { PNG } from 'pngjs';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { presets } from '../../presets/index.ts';
import { openSite, SCREENSHOTS, type Site } from '../support/page.ts';
import { nextVerdict, readVerdict, textOf, verdict } from '../support/verdict.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => site.close());

/** The project's own limit for the first view, kB: a control room's line brings it in some seconds. */
const FIRST_VIEW = 500;

/** Text of the row of the statistics table that starts with a name. */
async function statistic(page: Page, name: RegExp): Promise<string> {
  return textOf(page.getByRole('table', { name: 'Statistics' }).getByRole('row', { name }));
}

/** The form of the ring "outer", selected in the tree as a user would. */
async function outerForm(page: Page): Promise<Locator> {
  await page.getByRole('treeitem', { name: /^outer/ }).click();
  return page.getByRole('region', { name: /^outer/ });
}

describe('the first page', () => {
  test('opens on the first preset with its verdict, and a changed charge changes the numbers', async () => {
    const { page, complaints, foreignRequests } = await site.open();
    const first = await readVerdict(page);
    expect(first).toMatch(/Thinnest 70 nm, at the edge of the hole: 31 % below the average, outside your ±10 %\./);
    const before = await statistic(page, /mean/i);
    const charge = (await outerForm(page)).getByLabel('Charge', { exact: true });
    await charge.fill('0.6 g');
    await charge.press('Enter');
    const second = await nextVerdict(page, first);
    expect(second).not.toBe(first);
    expect(await statistic(page, /mean/i)).not.toBe(before);
    await page.screenshot({ path: join(SCREENSHOTS, 'first-page-1440x900.png') });
    expect(complaints).toEqual([]);
    expect(foreignRequests).toEqual([]);
  });

  test('loads at most 500 kB of scripts, compressed, until its first coat is drawn', async () => {
    const { page } = await site.open();
    await readVerdict(page);
    await page.locator('canvas').first().waitFor();
    const asked = await page.evaluate(() => {
      const [coat] = performance.getEntriesByName('evenfall: edit to coat');
      const end = (coat?.startTime ?? Infinity) + (coat?.duration ?? 0);
      return performance
        .getEntriesByType('resource')
        .filter(({ startTime }) => startTime <= end)
        .map(({ name }) => name);
    });
    const scripts = [...new Set(asked.filter((name) => name.endsWith('.js')))];
    // those without which there is no first coat in its picture
    for (const wanted of ['/index-', '/LayoutStage-', '/browserWorker-'])
      expect(scripts.filter((name) => name.includes(wanted))).toHaveLength(1);
    const sizes = scripts.map(
      async (name) => gzipSync(Buffer.from(await (await fetch(name)).arrayBuffer()), { level: 9 }).length,
    );
    const total = (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
    expect(total / 1000).toBeLessThanOrEqual(FIRST_VIEW);
  });

  test('shows the coat in colours of its scale', async () => {
    const { page } = await site.open();
    await readVerdict(page);
    await page.waitForTimeout(500); // the first frame of the software renderer
    const shot = PNG.sync.read(await page.locator('canvas').first().screenshot());
    let saturated = 0;
    for (let o = 0; o < shot.data.length; o += 4) {
      const [r = 0, g = 0, b = 0] = shot.data.subarray(o, o + 3);
      if (Math.max(r, g, b) - Math.min(r, g, b) > 60) saturated++;
    }
    // the coat is the only saturated thing, and takes a good part of the picture
    expect(saturated / (shot.width * shot.height)).toBeGreaterThan(0.05);
  });

  test.each([
    ['Count', '18'],
    ['Diameter', '110 in'],
    ['Height', '1,1 m'],
  ])('follows a change of %s', async (field, value) => {
    const { page, complaints } = await site.open();
    const first = await readVerdict(page);
    const input = (await outerForm(page)).getByLabel(field, { exact: true });
    await input.fill(value);
    await input.press('Enter');
    expect(await nextVerdict(page, first)).not.toBe(first);
    expect(complaints).toEqual([]);
  });

  test('refuses a bad value beside its field and changes nothing', async () => {
    const { page } = await site.open();
    const first = await readVerdict(page);
    const height = (await outerForm(page)).getByLabel('Height', { exact: true });
    for (const [rubbish, message] of [
      ['9 kg', /unit of mass/],
      ['12', /unit is missing/],
      ['9 m', /outside the tank/],
      ['<script>', /expected a length/],
    ] as const) {
      await height.fill(rubbish);
      await height.press('Enter');
      await page.getByText(message).first().waitFor();
    }
    expect(await textOf(verdict(page))).toBe(first);
  });

  test('opens every preset', async () => {
    const { page, complaints } = await site.open();
    let last = await readVerdict(page);
    for (const { file } of presets.slice(1)) {
      await page.getByLabel('Preset').selectOption({ label: file.name });
      last = await nextVerdict(page, last);
      expect(last).toMatch(/Thinnest|Thickest/);
    }
    expect(complaints).toEqual([]);
  });

  test('opens a file, saves it again unchanged, and refuses a broken one with every problem', async () => {
    const { page } = await site.open({ withoutFileDialogs: true });
    const first = await readVerdict(page);
    const open = async (name: string, text: string): Promise<void> => {
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Open', exact: true }).click(),
      ]);
      await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    };
    await open(
      'broken.json',
      JSON.stringify({ ...presets[0]?.file, mirror: { outerDiameter: '2.6' }, film: { target: '1 kg' } }),
    );
    const alert = page.getByRole('alert').filter({ hasText: 'mirror.outerDiameter' });
    await alert.waitFor();
    for (const path of ['mirror.radiusOfCurvature', 'mirror.outerDiameter', 'film.target'])
      expect(await textOf(alert)).toContain(path);
    expect(await textOf(verdict(page))).toBe(first);
    const other = presets[2]!.file;
    await open('other.json', JSON.stringify(other));
    await nextVerdict(page, first);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save', exact: true }).click(),
    ]);
    expect(JSON.parse(readFileSync(await download.path(), 'utf8'))).toEqual(other);
  });

  test('fits a small screen in both themes', async () => {
    for (const theme of ['light', 'dark'] as const) {
      const { page, complaints } = await site.open({ width: 1280, height: 720, theme });
      await readVerdict(page);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(overflow).toBeLessThanOrEqual(0);
      await page.waitForTimeout(500);
      await page.screenshot({ path: join(SCREENSHOTS, `first-page-1280x720-${theme}.png`) });
      expect(complaints).toEqual([]);
    }
  });
});
