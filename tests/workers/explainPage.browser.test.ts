import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { chromium, type Browser, type Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { explainCoat } from '../../engine/explain/explainCoat.ts';
import { createEvaluator, openPlantFile, type Coat } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { explainPage, facingOf, type PageOptions } from '../../workers/report/explainPage.ts';
import { CASES, coatOfDesign } from '../engine/explain/cases.ts';
import { CHROMIUM_ARGS, findChromium } from '../support/chromium.ts';
import { SCREENSHOTS } from '../support/page.ts';

/** Parts of a pixel that rounding may push a box over. */
const SUBPIXEL = 0.5;
/**
 * Words read in five minutes at 200 a minute: adults read English prose silently at 238 a minute on average
 * (M. Brysbaert, J. Memory and Language 109 (2019) 104047, from memory).
 */
const FIVE_MINUTES = 1000;
/** Terms that this page must do without. */
const JARGON =
  /zernike|wavefront|peak.to.valley|\brms\b|aperture|knudsen|lambert|quadrature|strehl|isotropic|participation/i;

const evaluator = createEvaluator();
let browser: Browser;
const pages = new Map<string, string>();

async function presetCoat(id: string): Promise<{ coat: Coat; options: PageOptions }> {
  const { file } = presets.find((preset) => preset.id === id)!;
  const opened = openPlantFile(file);
  if (!opened.ok) throw new Error(id);
  const coat = await evaluator.evaluate(opened.plant, { points: 4000, rays: 0 });
  return { coat, options: { facing: facingOf(file), dateLine: '1 March 2031' } };
}

/** A name as long as a design may have. */
const LONG = 'Seven ringed layouts of the northern workshop, third revision, with lids and vanes';

beforeAll(async () => {
  browser = await chromium.launch({ executablePath: await findChromium(), args: CHROMIUM_ARGS });
  const [asWired, secondRing, spider, crucibles] = await Promise.all(
    ['tarn-hill-as-wired', 'tarn-hill-second-ring', 'spider-shadow', 'crucibles-8m'].map(presetCoat),
  );
  const proposal = { name: secondRing!.coat.plant.name, coat: secondRing!.coat };
  pages.set('as-wired', explainPage(await explainCoat(asWired!.coat, { options: [proposal] }), asWired!.options));
  pages.set('proposal', explainPage(await explainCoat(secondRing!.coat), secondRing!.options));
  // as much as a page can be asked to hold: all reasons, gas, last year's coat, long names, many options
  const { coat } = crucibles!;
  const film = { ...coat.plant.film, lastYear: { reflectance: 0.87 }, mirrors: 3 };
  const full = { ...coat, plant: { ...coat.plant, name: LONG.slice(0, 80), film } };
  const many = Array.from({ length: 7 }, (_, i) => ({ name: `${i + 1} ${LONG}`.slice(0, 80), coat: spider!.coat }));
  pages.set('full', explainPage(await explainCoat(full, { options: many, freePath: 7 }), crucibles!.options));
  pages.set('bare', explainPage(await explainCoat(await coatOfDesign(CASES.bare))));
  pages.set('thick', explainPage(await explainCoat(await coatOfDesign(CASES['thick patch'])), { facing: 'sideways' }));
}, 60_000);
afterAll(async () => browser.close());

async function open(name: string, width: number, colorScheme: 'light' | 'dark' = 'light'): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
  const page = await context.newPage();
  await page.setContent(pages.get(name)!);
  return page;
}

/** Boxes that stick out of the window, and words that stick out of their picture. */
async function overflowing(page: Page): Promise<string[]> {
  return page.evaluate((slack) => {
    const found: string[] = [];
    if (document.documentElement.scrollWidth > window.innerWidth) found.push('the page scrolls sideways');
    const isScrolled = (element: Element): boolean => element.closest('.scroll') !== null;
    for (const element of document.querySelectorAll('main *')) {
      const { left, right, width } = element.getBoundingClientRect();
      if (width > 0 && !isScrolled(element) && (right > window.innerWidth + slack || left < -slack))
        found.push(`${element.tagName}: ${element.textContent?.slice(0, 40)}`);
    }
    for (const text of document.querySelectorAll('svg text')) {
      const frame = text.closest('svg')!.getBoundingClientRect();
      const box = text.getBoundingClientRect();
      if (
        box.left < frame.left - slack ||
        box.right > frame.right + slack ||
        box.top < frame.top - slack ||
        box.bottom > frame.bottom + slack
      )
        found.push(`in a picture: ${text.textContent}`);
    }
    return found;
  }, SUBPIXEL);
}

const names = ['as-wired', 'proposal', 'full', 'bare', 'thick'];

describe.each(names)('the page "%s"', (name) => {
  test.each([1440, 390])('keeps inside a window %d pixels wide', async (width) => {
    const page = await open(name, width);
    expect(await overflowing(page)).toEqual([]);
    await page.context().close();
  });

  test.each(['A4', 'Letter'] as const)('prints on one sheet of %s', async (format) => {
    const page = await open(name, 1440);
    const pdf = (await page.pdf({ format })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
    await page.context().close();
  });

  test('prints in light colours although the screen is dark', async () => {
    const page = await open(name, 720, 'dark');
    const paper = async (): Promise<string> =>
      page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--paper').trim());
    expect(await paper()).not.toBe('#ffffff');
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(await paper()).toBe('#ffffff');
    await page.context().close();
  });

  test('is read in five minutes, without words of the craft', async () => {
    const page = await open(name, 1440);
    const text = await page.locator('main').innerText();
    expect(text.split(/\s+/).length).toBeLessThan(FIVE_MINUTES);
    expect(text).not.toMatch(JARGON);
    for (const [term, meaning] of [
      [/\bnm\b/, /A nanometre \(nm\) is a millionth of a millimetre/],
      [/filament/, /A filament is a hot wire from which aluminium evaporates/],
      [/witness slide/, /witness slides, small glass plates beside the mirror/],
    ] as const)
      if (term.test(text)) expect(text).toMatch(meaning);
    await page.context().close();
  });
});

describe.each(['as-wired', 'proposal'])('the page "%s"', (name) => {
  test.each(['light', 'dark'] as const)('is fit for readers of all kinds in %s colours', async (theme) => {
    const page = await open(name, 1440, theme);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    mkdirSync(SCREENSHOTS, { recursive: true });
    await page.screenshot({ path: join(SCREENSHOTS, `explain-${name}-1440-${theme}.png`), fullPage: true });
    await page.setViewportSize({ width: 390, height: 844 });
    await page.screenshot({ path: join(SCREENSHOTS, `explain-${name}-390-${theme}.png`), fullPage: true });
    await page.context().close();
  });
});

test('the pages of a bad coat and of an even one differ in question, answer and headings', async () => {
  const read = async (name: string): Promise<string[]> => {
    const page = await open(name, 1440);
    const texts = await page.locator('h1, .answer, .why h2').allInnerTexts();
    await page.context().close();
    return texts;
  };
  const [bad, even] = [await read('as-wired'), await read('proposal')];
  expect(bad[0]).toBe('Why is the middle thin?');
  expect(even[0]).toBe('Is this coat even enough?');
  expect(bad[2]).toBe('Why: hole edge against outer edge');
  expect(even[2]).toBe('Why it comes out even: outer edge against hole edge');
});

test('the bars of the page show the shares that sum to the difference', async () => {
  const page = await open('as-wired', 1440);
  const texts = await page.locator('.bars text.strong').allTextContents();
  const shares = texts
    .filter((text) => text.endsWith('%'))
    .map((text) => Number(text.replace('\u2212', '-').replace(/[^-\d.]/g, '')));
  const sum = shares.slice(0, -1).reduce((all, value) => all + value, 0);
  // each of at most four shares is rounded to a whole percent
  expect(Math.abs(sum - shares.at(-1)!)).toBeLessThanOrEqual(2.5);
  expect(shares.at(-1)).toBe(-44);
  await page.context().close();
});
