import { join } from 'node:path';
import { PNG } from 'pngjs';
import type { Locator, Page } from 'playwright';
import { interpolateCividis } from 'd3-scale-chromatic';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { presets } from '../../presets/index.ts';
import { openSite, SCREENSHOTS, type OpenOptions, type Site } from '../support/page.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => site.close());

/** What a test may ask of the drawing calls that the page makes. */
interface Counters {
  draws: number;
  buffers: number;
  textures: number;
}
declare global {
  interface Window {
    webglCounts: Counters;
  }
}

/** Counts the page's calls to WebGL from outside the page. */
function countCalls(): void {
  const counts: Counters = { draws: 0, buffers: 0, textures: 0 };
  window.webglCounts = counts;
  const gl = WebGL2RenderingContext.prototype;
  const wrap = (names: readonly string[], count: () => void): void => {
    for (const name of names) {
      const original = Reflect.get(gl, name) as (...values: unknown[]) => unknown;
      Reflect.set(gl, name, function (this: WebGL2RenderingContext, ...values: unknown[]): unknown {
        count();
        return original.apply(this, values);
      });
    }
  };
  wrap(['drawElements', 'drawArrays', 'drawElementsInstanced', 'drawArraysInstanced'], () => counts.draws++);
  wrap(['createBuffer'], () => counts.buffers++);
  wrap(['deleteBuffer'], () => counts.buffers--);
  wrap(['createTexture'], () => counts.textures++);
  wrap(['deleteTexture'], () => counts.textures--);
}

async function openPicture(options: OpenOptions = {}): Promise<{ page: Page; complaints: string[] }> {
  const { page, complaints } = await site.open(options);
  await page.addInitScript(countCalls);
  await page.reload();
  await page
    .getByRole('status', { name: 'Verdict' })
    .getByText(/Thinnest/)
    .first()
    .waitFor();
  await page.waitForFunction(() => window.webglCounts.draws > 0);
  return { page, complaints };
}

const selection = (page: Page): Locator => page.getByRole('status', { name: 'Selection' });
const picture = (page: Page): Locator => page.getByRole('application');
const verdictText = async (page: Page): Promise<string> =>
  ((await page.getByRole('status', { name: 'Verdict' }).textContent()) ?? '').replace(/[\u00a0\u202f]/g, ' ');
const pressed = (page: Page): Locator => page.getByRole('toolbar', { name: 'View' }).locator('[aria-pressed=true]');

/** A field of the form of the selected part. */
const formField = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true });

/** Middle of an element, px. */
async function middleOf(locator: Locator): Promise<{ x: number; y: number }> {
  const box = await locator.boundingBox();
  if (!box) throw new Error('expected an element with a place on screen');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Waits until the page has drawn nothing for a while, and returns how often it has drawn by then. */
async function settled(page: Page): Promise<number> {
  for (;;) {
    const before = await page.evaluate(() => window.webglCounts.draws);
    await page.waitForTimeout(400);
    const now = await page.evaluate(() => window.webglCounts.draws);
    if (now === before) return now;
  }
}

describe('the picture of the tank', () => {
  test('selects a filament by a click, adds with Shift, and clears by a click on nothing', async () => {
    const { page, complaints } = await openPicture();
    await picture(page).focus();
    await page.keyboard.press('1');
    await settled(page);
    const box = await picture(page).boundingBox();
    if (!box) throw new Error('expected the picture on screen');
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    // seen face on, filament 1 is to the right of the middle, and filament 19 as far to the left
    let out = 40;
    const text = async (): Promise<string> => (await selection(page).textContent()) ?? '';
    for (; out < box.height / 2 && !/outer 1,/.test(await text()); out += 6)
      await page.mouse.click(middle.x + out, middle.y);
    expect(await text()).toBe('Selected: outer 1, 425.6 mg, outer feed 1');
    await page.keyboard.down('Shift');
    await page.mouse.click(middle.x - out + 6, middle.y);
    await page.keyboard.up('Shift');
    await expect.poll(text).toBe('2 parts selected, outer 19 last');
    await page.mouse.click(box.x + box.width - 200, box.y + box.height - 6);
    await expect.poll(async () => selection(page).textContent()).toBe('Nothing selected');
    expect(complaints).toEqual([]);
  });

  test('turning the view selects nothing', async () => {
    const { page } = await openPicture();
    const { x, y } = await middleOf(picture(page));
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y + 20, { steps: 4 });
    await page.mouse.up();
    expect(await selection(page).textContent()).toBe('Nothing selected');
    await expect.poll(async () => pressed(page).textContent()).toBe('Free');
  });

  test('a dragged handle changes the diameter in field and verdict, as one step that undo takes back', async () => {
    const { page, complaints } = await openPicture();
    const first = await verdictText(page);
    await picture(page).focus();
    await page.keyboard.press('n');
    await expect.poll(async () => selection(page).textContent()).toContain('Selected: outer, 36 filaments');
    const grip = page.locator('[data-handle=diameter]');
    await settled(page);
    const from = await middleOf(grip);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (let i = 1; i <= 6; i++) await page.mouse.move(from.x - 5 * i, from.y, { steps: 2 });
    await expect.poll(async () => page.locator('.drag-read-out b').textContent()).toMatch(/^2\.\d{1,2} m$/);
    await page.mouse.up();
    const field = formField(page, 'Diameter');
    await expect.poll(async () => field.inputValue()).toMatch(/^2\.\d{1,2} m$/);
    const dragged = Number.parseFloat(await field.inputValue());
    expect(dragged).toBeLessThan(2.9);
    // it snaps to whole centimetres
    expect(Math.abs(dragged * 100 - Math.round(dragged * 100))).toBeLessThan(1e-9);
    await expect.poll(async () => verdictText(page)).not.toBe(first);
    await page.getByRole('button', { name: 'Undo: diameter of outer' }).click();
    await expect.poll(async () => field.inputValue()).toBe('2.9 m');
    await expect.poll(async () => verdictText(page)).toBe(first);
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    expect(complaints).toEqual([]);
  });

  test('a handle stops at the wall and says why; Escape takes the drag back', async () => {
    const { page } = await openPicture();
    await picture(page).focus();
    await page.keyboard.press('n');
    await settled(page);
    const from = await middleOf(page.locator('[data-handle=diameter]'));
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 160, from.y, { steps: 4 });
    const readOut = page.locator('.drag-read-out');
    await readOut.getByText(/outside the tank/).waitFor();
    // the tank is 3.4 m wide; a coil of 64 mm needs a little more than its diameter
    const value = Number.parseFloat((await readOut.locator('b').textContent()) ?? '');
    expect(value).toBeGreaterThan(3.3);
    expect(value).toBeLessThan(3.4);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    const field = formField(page, 'Diameter');
    await expect.poll(async () => field.inputValue()).toBe('2.9 m');
  });

  test('Alt with arrow and page keys moves the selected part by one step', async () => {
    const { page } = await openPicture();
    await picture(page).focus();
    await page.keyboard.press('n');
    await page.keyboard.press('Alt+PageUp');
    await expect.poll(async () => formField(page, 'Height').inputValue()).toBe('0.91 m');
    await page.keyboard.press('Alt+ArrowLeft');
    await expect.poll(async () => formField(page, 'Diameter').inputValue()).toBe('2.89 m');
    await page.keyboard.press('Alt+Shift+ArrowLeft');
    await expect.poll(async () => formField(page, 'Diameter').inputValue()).toBe('2.889 m');
    expect(await page.getByRole('status', { name: 'Last move' }).textContent()).toBe('diameter of outer: 2.889 m');
  });

  test('keys 1 to 4 and 0 change the view, and each looks different', async () => {
    const { page, complaints } = await openPicture();
    await picture(page).focus();
    const shots = new Set<string>();
    for (const [key, name] of [
      ['1', 'Front'],
      ['2', 'Side'],
      ['3', 'From the mirror'],
      ['4', 'Free'],
    ] as const) {
      await page.keyboard.press(key);
      await expect.poll(async () => pressed(page).textContent()).toBe(name);
      await settled(page);
      const shot = await page
        .locator('canvas')
        .first()
        .screenshot({ path: join(SCREENSHOTS, `scene-view-${key}.png`) });
      shots.add(shot.toString('base64'));
    }
    expect(shots.size).toBe(4);
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('0');
    await settled(page);
    shots.add((await page.locator('canvas').first().screenshot()).toString('base64'));
    expect(shots.size).toBe(4);
    expect(complaints).toEqual([]);
  });

  test('an idle page draws no frames', async () => {
    const { page } = await openPicture();
    const before = await settled(page);
    await page.waitForTimeout(1500);
    expect(await page.evaluate(() => window.webglCounts.draws)).toBe(before);
  });

  test('many edits leave no buffers and textures behind', async () => {
    const { page, complaints } = await openPicture();
    await picture(page).focus();
    await page.keyboard.press('n');
    await page.getByRole('button', { name: 'Show' }).click();
    await page.getByLabel('Feeds by colour and number').check();
    await page.getByLabel('Paths from filaments to the probe').check();
    await page.keyboard.press('Escape');
    await picture(page).focus();
    const press = async (times: number): Promise<void> => {
      for (let i = 0; i < times; i++) await page.keyboard.press(i % 2 === 0 ? 'Alt+ArrowLeft' : 'Alt+ArrowRight');
      await settled(page);
    };
    await press(20);
    const { buffers, textures } = await page.evaluate(() => ({ ...window.webglCounts }));
    await press(60);
    expect(await page.evaluate(() => window.webglCounts.buffers)).toBe(buffers);
    expect(await page.evaluate(() => window.webglCounts.textures)).toBe(textures);
    expect(complaints).toEqual([]);
  });

  test('a colour means its number: the flat middle of the map has the colour of its value', async () => {
    const { page } = await openPicture();
    await picture(page).focus();
    await page.keyboard.press('1');
    await page.getByRole('button', { name: 'Show' }).click();
    // a fixed range far below every value: the whole mirror has the last colour of the scale
    await page.getByLabel('Colours', { exact: true }).selectOption({ label: 'fixed range' });
    for (const [label, value] of [
      ['From', '1 nm'],
      ['to', '2 nm'],
    ] as const) {
      await page.getByLabel(label, { exact: true }).fill(value);
      await page.getByLabel(label, { exact: true }).press('Enter');
    }
    await page.keyboard.press('Escape');
    await settled(page);
    const shot = PNG.sync.read(await page.locator('canvas').first().screenshot());
    const last = (interpolateCividis(1).match(/\d+/g) ?? []).map(Number);
    let exact = 0;
    for (let o = 0; o < shot.data.length; o += 4) if (last.every((value, k) => shot.data[o + k] === value)) exact++;
    // the mirror fills about a tenth of the picture, and not one of its pixels is lit or toned otherwise
    expect(exact / (shot.width * shot.height)).toBeGreaterThan(0.05);
  });

  test('maps arrival angles when asked, with their unit', async () => {
    const { page, complaints } = await openPicture();
    await page.getByRole('button', { name: 'Show' }).click();
    for (const [label, title] of [
      ['Mean incidence angle', 'Mean incidence angle, °'],
      ['Share arriving beyond 60°', 'Share arriving beyond 60°, %'],
      ['Deviation from target', 'Deviation from target, %'],
      ['Thickness', 'Thickness, nm'],
    ] as const) {
      await page.getByLabel('Quantity', { exact: true }).selectOption({ label });
      await expect.poll(async () => page.locator('.legend-title').textContent()).toBe(title);
    }
    expect(complaints).toEqual([]);
  });

  test('labels cover neither each other nor the legend, in any preset and view, on a small screen', async () => {
    const { page } = await openPicture({ width: 1280, height: 720 });
    await page.getByRole('button', { name: 'Show' }).click();
    await page.getByLabel('Feeds by colour and number').check();
    await page.keyboard.press('Escape');
    for (const { file } of presets) {
      await page.getByLabel('Preset').selectOption({ label: file.name });
      for (const key of ['0', '1', '2', '3']) {
        await picture(page).focus();
        await page.keyboard.press(key);
        await settled(page);
        expect(await page.evaluate(overlappingLabels), `${file.name}, view ${key}`).toEqual([]);
      }
    }
  });
});

/** Pairs of visible texts in the picture that cover each other by more than a pixel. */
function overlappingLabels(): string[] {
  const elements = [...document.querySelectorAll<HTMLElement>('.scene .label-text, .scene [data-keep-clear]')];
  const visible = elements.filter((element) => getComputedStyle(element).visibility !== 'hidden');
  const boxes = visible
    .map((element) => ({ text: element.textContent ?? '', box: element.getBoundingClientRect() }))
    .filter(({ box }) => box.width > 0 && box.right > 0);
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => {
      const isWide = a.box.left < b.box.right - 1 && b.box.left < a.box.right - 1;
      const isHigh = a.box.top < b.box.bottom - 1 && b.box.top < a.box.bottom - 1;
      return isWide && isHigh ? [`${a.text} × ${b.text}`] : [];
    }),
  );
}
