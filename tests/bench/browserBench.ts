/** The bench in the real browser: the built page, headless, with software rendering. Prints, asserts nothing. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright';
import { packFragment } from '../../viewer/state/keep/designLink.ts';
import buildPage from '../support/buildPage.ts';
import { openSite, type Site } from '../support/page.ts';
import { readVerdict } from '../support/verdict.ts';
import { benchDesign } from './benchDesign.ts';
import type { Row } from './row.ts';

const DIST = fileURLToPath(new URL('../../dist/', import.meta.url));
const MEASURE = 'evenfall: edit to coat';
const REPEATS = 9;

const middle = (values: readonly number[], share = 0.5): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ?? NaN;

/** Scripts that the first view loads: the entry and all that it imports, compressed, kB. */
function firstViewSize(): number {
  const wanted = [...readFileSync(`${DIST}index.html`, 'utf8').matchAll(/assets\/[\w.-]+\.js/g)].map(([path]) => path);
  const seen = new Set<string>();
  for (let path = wanted.pop(); path !== undefined; path = wanted.pop()) {
    if (seen.has(path)) continue;
    seen.add(path);
    const text = readFileSync(DIST + path, 'utf8');
    // static imports only: import"./x.js", from"./x.js"
    for (const [, name] of text.matchAll(/(?:from|import)\s*["']\.\/([\w.-]+\.js)["']/g)) wanted.push(`assets/${name}`);
  }
  const worker = readdirSync(`${DIST}assets`).filter((name) => name.startsWith('browserWorker'));
  for (const name of worker) seen.add(`assets/${name}`);
  return [...seen].reduce((sum, path) => sum + gzipSync(readFileSync(DIST + path), { level: 9 }).length, 0) / 1000;
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
  return (await entry.jsonValue())!;
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

/** Drags the handle of a ring's diameter and times each coat on the way. */
async function drag(page: Page): Promise<number[]> {
  const grip = page.locator('[data-handle=diameter]');
  const box = await grip.boundingBox();
  if (!box) throw new Error('the diameter has no handle on screen');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  const times: number[] = [];
  let last = (await nextCoat(page, -1)).at;
  for (let i = 1; i <= 3 * REPEATS; i++) {
    await page.mouse.move(x - 3 * i, y);
    const { at, took } = await nextCoat(page, last);
    last = at;
    times.push(took);
  }
  await page.mouse.up();
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
  const size = firstViewSize();
  const first = await firstResult(site);
  const { page } = await site.open({
    suffix: packFragment(JSON.stringify(benchDesign({ emission: { law: 'open coil' } }))),
  });
  await readVerdict(page);
  await page.getByRole('treeitem', { name: /^ring 1/ }).waitFor();
  const charges = await chargeEdits(page, 3 * REPEATS);
  const before = await heapBytes(page);
  const drags = await drag(page);
  await chargeEdits(page, 250);
  const half = await heapBytes(page);
  await chargeEdits(page, 250);
  const after = await heapBytes(page);
  await site.close();
  const ms = (value: number): string => `${value.toFixed(1)} ms`;
  const mb = (bytes: number): string => `${(bytes / 2 ** 20).toFixed(1)} MB`;
  return [
    {
      what: 'page: scripts of the first view, worker included, compressed',
      figure: `${size.toFixed(0)} kB`,
      goal: '≤ 500 kB',
    },
    { what: 'page: from navigation to the first coat, nothing cached', figure: ms(first), goal: '≤ 2500 ms' },
    { what: 'page: a charge edit, 96 filaments × 6 loops, median', figure: ms(middle(charges)), goal: '≤ 16 ms' },
    { what: 'page: a dragged ring of 48 × 6 loops, median', figure: ms(middle(drags)), goal: '≤ 50 ms' },
    { what: 'page: the same, 95th percentile', figure: ms(middle(drags, 0.95)), goal: '' },
    {
      what: 'page: script memory before, after 250 and after 500 edits',
      figure: [before, half, after].map(mb).join(', '),
      goal: 'no growth',
    },
  ];
}
