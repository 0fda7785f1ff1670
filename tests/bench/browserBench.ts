/** The bench in the real browser: the built page, headless, with software rendering. Prints, asserts nothing. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright';
import buildPage from '../support/buildPage.ts';
import { openSite, type Site } from '../support/page.ts';
import { benchDesign } from './benchDesign.ts';
import { dragRows, howDrawn, middle, openDesign, settled, withoutDrawing } from './dragRows.ts';
import type { Row } from './row.ts';

const DIST = fileURLToPath(new URL('../../dist/', import.meta.url));
const MEASURE = 'evenfall: edit to coat';
const REPEATS = 9;

/** Scripts that a page asked for up to its first coat, its workers' included, compressed, kB. */
async function firstViewSize(site: Site): Promise<number> {
  const { page } = await site.open();
  await nextCoat(page, -1);
  const names = await page.evaluate((measure) => {
    const [coat] = performance.getEntriesByName(measure);
    const end = (coat?.startTime ?? Infinity) + (coat?.duration ?? 0);
    return performance
      .getEntriesByType('resource')
      .filter(({ startTime }) => startTime <= end)
      .map(({ name }) => new URL(name).pathname)
      .filter((path) => path.endsWith('.js'));
  }, MEASURE);
  await page.context().close();
  const worker = readdirSync(`${DIST}assets`).filter((name) => name.startsWith('browserWorker'));
  const files = new Set([...names.map((path) => path.replace(/^\//, '')), ...worker.map((name) => `assets/${name}`)]);
  return [...files].reduce((sum, path) => sum + gzipSync(readFileSync(DIST + path), { level: 9 }).length, 0) / 1000;
}

/** Time of the last coat, once it is another one than before, ms. */
async function nextCoat(page: Page, before: number): Promise<{ readonly at: number; readonly took: number }> {
  const entry = await page.waitForFunction(
    ([name, old]) => {
      const [measure] = performance.getEntriesByName(name as string);
      return measure && measure.startTime !== old ? { at: measure.startTime, took: measure.duration } : null;
    },
    [MEASURE, before] as const,
    { polling: 1 },
  );
  const value = (await entry.jsonValue())!;
  await entry.dispose(); // a handle keeps what it holds alive in the page
  return value;
}

/** From navigation to the first coat, on a fresh cache, ms. */
async function firstResult(site: Site): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < REPEATS; i++) {
    const { page } = await site.open();
    const { at, took } = await nextCoat(page, -1);
    times.push(at + took);
    await page.context().close();
  }
  return middle(times);
}

/** Counts tasks of the main thread over 50 ms; the browser reports no shorter ones. */
function watchTasks(): void {
  const long: number[] = [];
  (globalThis as { long?: number[] }).long = long;
  new PerformanceObserver((list) => long.push(...list.getEntries().map(({ duration }) => duration))).observe({
    type: 'longtask',
    buffered: true,
  });
}

/** The longest task of each load until the page is at rest, ms; 50 where there is none longer. */
async function longestTasks(site: Site): Promise<number[]> {
  const longest: number[] = [];
  for (let i = 0; i < REPEATS; i++) {
    const { page } = await site.open();
    await page.addInitScript(withoutDrawing);
    await page.addInitScript(watchTasks);
    await page.goto(site.address);
    await nextCoat(page, -1);
    await settled(page);
    longest.push(await page.evaluate(() => Math.max(50, ...((globalThis as { long?: number[] }).long ?? []))));
    await page.context().close();
  }
  return longest;
}

async function chargeEdits(page: Page, count: number): Promise<number[]> {
  await page.getByRole('treeitem', { name: /^ring 1/ }).click();
  const charge = page.getByRole('region', { name: /^ring 1/ }).getByLabel('Charge', { exact: true });
  const times: number[] = [];
  let last = (await nextCoat(page, -1)).at;
  for (let i = 0; i < count; i++) {
    await charge.fill(`${270 + (i % 40)} mg`);
    await charge.press('Enter');
    const { at, took } = await nextCoat(page, last);
    last = at;
    times.push(took);
  }
  return times;
}

/** Bytes of script memory in use after collecting garbage. */
async function heapBytes(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize;
}

/** The rows of the browser. */
export async function browserRows(): Promise<Row[]> {
  await buildPage();
  const site = await openSite();
  const ms = (value: number): string => `${value.toFixed(1)} ms`;
  const mb = (bytes: number): string => `${(bytes / 2 ** 20).toFixed(1)} MB`;
  const rows: Row[] = [
    {
      what: 'page: scripts of the first view, worker included, compressed',
      figure: `${(await firstViewSize(site)).toFixed(0)} kB`,
      goal: '≤ 500 kB',
    },
    {
      what: 'page: from navigation to the first coat, nothing cached',
      figure: ms(await firstResult(site)),
      goal: '≤ 2500 ms',
    },
  ];
  const tasks = await longestTasks(site);
  rows.push({
    what: 'page, drawing left out: longest task of the main thread while loading, median and most of nine',
    figure: `${middle(tasks).toFixed(0)}, ${Math.max(...tasks).toFixed(0)} ms`,
    goal: '≤ 50 ms',
  });
  for (const isDrawn of [false, true]) {
    const how = howDrawn(isDrawn);
    const page = await openDesign(site, benchDesign(), isDrawn);
    const charges = await chargeEdits(page, 3 * REPEATS);
    rows.push({
      what: `page, ${how}: a charge edit, 96 filaments × 6 loops, median`,
      figure: ms(middle(charges)),
      goal: isDrawn ? '' : '≤ 16 ms',
    });
    await page.context().close();
    rows.push(...(await dragRows(site, isDrawn)));
  }
  const page = await openDesign(site, benchDesign(), false);
  const memory: number[] = [];
  for (let i = 0; i < 4; i++) {
    await chargeEdits(page, 250);
    memory.push(await heapBytes(page));
  }
  rows.push({
    what: 'page: script memory after 250, 500, 750 and 1000 edits',
    figure: memory.map(mb).join(', '),
    goal: 'no growth',
  });
  await site.close();
  return rows;
}
