import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import react from '@vitejs/plugin-react';
import { chromium, type Browser, type Page } from 'playwright';
import { PNG } from 'pngjs';
import { build, preview, type PreviewServer } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CHROMIUM_ARGS, findChromium } from '../support/chromium.ts';
import { SCREENSHOTS } from '../support/page.ts';
import { readVerdict, textOf } from '../support/verdict.ts';

const ROOT = fileURLToPath(new URL('./stagesPage/', import.meta.url));

let folder: string;
let server: PreviewServer;
let browser: Browser;
let address: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'stages-'));
  const shared = { configFile: false, root: ROOT, base: './', logLevel: 'error' } as const;
  const output = { outDir: folder, emptyOutDir: true, target: 'es2022', minify: false } as const;
  await build({ ...shared, mode: 'production', plugins: [react()], worker: { format: 'es' }, build: output });
  server = await preview({
    ...shared,
    build: { outDir: folder },
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
  address = server.resolvedUrls?.local[0] ?? '';
  browser = await chromium.launch({ executablePath: await findChromium(), args: CHROMIUM_ARGS });
});
afterAll(async () => {
  await browser.close();
  await server.close();
  await rm(folder, { recursive: true });
});

interface Options {
  readonly suffix?: string;
  readonly theme?: 'light' | 'dark';
  /** takes the system's file dialogs away, so that files are downloaded */
  readonly withoutFileDialogs?: boolean;
}

async function open(options: Options = {}): Promise<{ page: Page; complaints: string[] }> {
  const { suffix = '', theme = 'light', withoutFileDialogs = false } = options;
  const viewport = { width: 1280, height: 720 };
  const context = await browser.newContext({ viewport, colorScheme: theme, reducedMotion: 'reduce' });
  const page = await context.newPage();
  if (withoutFileDialogs) {
    await page.addInitScript(() => {
      Reflect.deleteProperty(window, 'showOpenFilePicker');
      Reflect.deleteProperty(window, 'showSaveFilePicker');
    });
  }
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(address + suffix);
  return { page, complaints };
}

const focusedText = async (page: Page): Promise<string> => textOf(page.locator(':focus'));
const current = async (page: Page): Promise<string> =>
  textOf(page.getByRole('navigation', { name: 'Stages' }).locator('[aria-current=page]'));
const query = (page: Page): string => new URL(page.url()).search;
const heading = (page: Page, text: RegExp) => page.getByRole('heading', { level: 2, name: text });

describe('the row of stages', () => {
  test('is walked by arrow keys, and Enter shows a stage: its heading has the focus, the address names it', async () => {
    const { page, complaints } = await open();
    await readVerdict(page);
    await page.getByRole('link', { name: 'Layout' }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await focusedText(page)).toBe('Pieces');
    expect(await current(page)).toBe('Layout');
    await page.keyboard.press('End');
    expect(await focusedText(page)).toBe('Broken');
    await page.keyboard.press('ArrowRight');
    expect(await focusedText(page)).toBe('Layout');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.getByText('All pieces hold together.').waitFor();
    expect(await focusedText(page)).toBe('Pieces: Do the shared pieces hold together?');
    expect(await current(page)).toBe('Pieces');
    expect(query(page)).toBe('?stage=pieces');
    expect(await textOf(page.getByRole('status', { name: 'What has just happened' }))).toMatch(/^Stage Pieces\./);
    expect(complaints).toEqual([]);
  });

  test('digits show stages; in the picture of the tank and in fields they mean something else', async () => {
    const { page } = await open();
    await readVerdict(page);
    await page.getByRole('application').focus();
    await page.keyboard.press('2');
    expect(await current(page)).toBe('Layout');
    await page.getByRole('textbox', { name: 'Name' }).first().focus();
    await page.keyboard.press('2');
    expect(await current(page)).toBe('Layout');
    await page.keyboard.press('Escape');
    await page.getByRole('link', { name: 'Layout' }).focus();
    await page.keyboard.press('2');
    await page.getByText('All pieces hold together.').waitFor();
    await page.keyboard.press('1');
    await expect.poll(async () => current(page)).toBe('Layout');
    await page.keyboard.press('?');
    expect(await textOf(page.getByRole('dialog'))).toMatch(/Show the stage Pieces/);
  });

  test('the address chooses the stage, Back and Forward follow, and the browser keeps the last one', async () => {
    const { page, complaints } = await open({ suffix: '?stage=pieces&other=1' });
    await page.getByText('All pieces hold together.').waitFor();
    // the first stage of a visit does not take the focus
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('BODY');
    await page.getByRole('link', { name: 'Layout' }).click();
    await readVerdict(page);
    expect(query(page)).toBe('?other=1');
    await page.goBack();
    await page.getByText('All pieces hold together.').waitFor();
    expect(await focusedText(page)).toMatch(/^Pieces:/);
    await page.goForward();
    await expect.poll(async () => current(page)).toBe('Layout');
    await page.goBack();
    await expect.poll(async () => current(page)).toBe('Pieces');
    await page.goto(address);
    await page.getByText('All pieces hold together.').waitFor();
    expect(query(page)).toBe('?stage=pieces');
    await page.goto(`${address}?stage=nonsense`);
    await page.getByText('All pieces hold together.').waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('a stage that was left', () => {
  test('comes back as it was: view of the tank, tabs, selection and unfinished typing', async () => {
    const { page, complaints } = await open();
    await readVerdict(page);
    await page.getByRole('treeitem', { name: /^outer/ }).click();
    await page.getByRole('tab', { name: 'Area by thickness' }).click();
    await page.getByRole('button', { name: 'Zoom in' }).click();
    await page.getByRole('button', { name: 'Zoom in' }).click();
    const field = page.getByRole('region', { name: /^outer/ }).getByLabel('Height', { exact: true });
    await field.fill('0.9');
    await field.press('Enter');
    await page.getByText(/the unit is missing/).waitFor();
    await page.waitForTimeout(500);
    const canvas = page.locator('.scene-frame canvas');
    // handles and names stand where the camera sees their parts, to a tenth of a pixel
    const seen = async (): Promise<string[]> =>
      page
        .locator('.scene-handle, .scene-label')
        .evaluateAll((all) => all.map((one) => (one as HTMLElement).style.transform));
    const before = await seen();
    expect(before.length).toBeGreaterThan(2);
    await page.getByRole('link', { name: 'Pieces' }).click();
    await page.getByText('All pieces hold together.').waitFor();
    expect(await canvas.count()).toBe(0);
    await page.getByRole('link', { name: 'Layout' }).click();
    await readVerdict(page);
    expect(await page.getByRole('tab', { name: 'Area by thickness' }).getAttribute('aria-selected')).toBe('true');
    expect(await field.inputValue()).toBe('0.9');
    await expect.poll(seen).toEqual(before);
    const shot = PNG.sync.read(await canvas.screenshot());
    expect(new Set(new Uint32Array(Uint8Array.from(shot.data).buffer)).size).toBeGreaterThan(1000);
    expect(complaints).toEqual([]);
  });

  test('follows what was edited while it was hidden', async () => {
    const { page } = await open();
    const first = await readVerdict(page);
    await page.getByRole('link', { name: 'Pieces' }).click();
    await page.getByLabel('Preset').selectOption({ index: 1 });
    await page.getByRole('link', { name: 'Layout' }).click();
    await expect.poll(async () => readVerdict(page)).not.toBe(first);
  });
});

describe('a stage that fails', () => {
  test('to load says so, and tries again when asked', async () => {
    const { page } = await open({ suffix: '?stage=missing' });
    const alert = page.getByRole('alert');
    await alert.waitFor();
    expect(await textOf(alert)).toMatch(/The stage Missing could not be loaded\..*Failed to fetch/);
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect.poll(async () => textOf(alert)).toMatch(/could not be loaded/);
    await page.evaluate(() => void (window.faults.isOffline = false));
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByText('All pieces hold together.').waitFor();
  });

  test('by throwing says so, leaves the others alone, and tries again when asked', async () => {
    const { page } = await open();
    const verdict = await readVerdict(page);
    await page.getByRole('link', { name: 'Broken' }).click();
    const alert = page.getByRole('alert');
    await alert.waitFor();
    expect(await textOf(alert)).toMatch(/The stage Broken has failed\..*made to fail by the test/);
    await page.getByRole('link', { name: 'Layout' }).click();
    expect(await readVerdict(page)).toBe(verdict);
    await page.getByRole('link', { name: 'Broken' }).click();
    await page.evaluate(() => void (window.faults.isBroken = false));
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByText('Whole again').waitFor();
  });
});

describe('the pieces of a stage', () => {
  test.each(['light', 'dark'] as const)('have no serious finding in the %s theme', async (theme) => {
    const { page, complaints } = await open({ suffix: '?stage=pieces', theme });
    await page.getByRole('img', { name: /^Pressure against time/ }).waitFor();
    await page.getByRole('button', { name: 'Start from an example' }).click();
    await page.getByText('2 readings, no faults.').waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    expect(serious.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
    await page.screenshot({ path: join(SCREENSHOTS, `pieces-${theme}-1280x720.png`) });
    expect(complaints).toEqual([]);
  });

  test('a field refuses a bad quantity with the reason and takes a good one in any unit', async () => {
    const { page } = await open({ suffix: '?stage=pieces' });
    const field = page.getByLabel('Base pressure');
    for (const [text, reason] of [
      ['7 mg', /unit of mass/],
      ['1', /the unit is missing/],
      ['2000 mbar', /expected at most 1000 mbar/],
    ] as const) {
      await field.fill(text);
      await field.press('Enter');
      await page.getByText(reason).waitFor();
    }
    await field.fill('1 Torr');
    await field.press('Enter');
    // 1 Torr = 101325/760 Pa: NIST SP 811 (2008), appendix B.8
    expect(await field.inputValue()).toBe('1.33322 mbar');
  });

  test('pasted rows tell their faults by row and column', async () => {
    const { page } = await open({ suffix: '?stage=pieces' });
    await page.getByLabel('Thickness at the witnesses').fill('witness,thickness\n,nm\nrim 0,118\nhub,7 mg');
    await page.getByText(/Row 4, column thickness: .*unit of mass/).waitFor();
    expect(await page.locator('.paste-preview td[data-fault]').count()).toBe(1);
  });

  test('a chart reads out under the pointer, and its table goes to a file', async () => {
    const { page } = await open({ suffix: '?stage=pieces', withoutFileDialogs: true });
    const chart = page.getByRole('img', { name: /^Pressure against time/ });
    const box = await chart.boundingBox();
    if (!box) throw new Error('expected the chart on screen');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.getByText(/min: total .* mbar, water .* mbar/).waitFor();
    await page.getByText('Pump-down as a Table').click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /as CSV/ }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('pump-down.csv');
  });
});

test('in print the stage is a report: black on white, without what is for the screen', async () => {
  const { page } = await open({ theme: 'dark' });
  await readVerdict(page);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(await page.getByRole('navigation', { name: 'Stages' }).isVisible()).toBe(false);
  expect(await page.getByRole('button').count()).toBe(0);
  expect(await heading(page, /^Layout/).isVisible()).toBe(true);
  const colors = await page.evaluate(() => {
    const style = getComputedStyle(document.body);
    return [style.color, style.backgroundColor];
  });
  expect(colors).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
  expect(await page.getByRole('table', { name: 'Statistics' }).isVisible()).toBe(true);
  await page.screenshot({ path: join(SCREENSHOTS, 'layout-print.png'), fullPage: true });
});
