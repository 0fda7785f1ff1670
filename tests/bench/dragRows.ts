/** A ring dragged by its handle in the built page: from the pointer's event to the coat, and to the painted frame. */
import type { Page } from 'playwright';
import { packFragment } from '../../viewer/state/keep/designLink.ts';
import { presets } from '../../presets/index.ts';
import type { Site } from '../support/page.ts';
import { benchDesign } from './benchDesign.ts';
import type { Row } from './row.ts';

/** Moves that count, and those before them, while compilers warm up. */
const MOVES = 60;
const WARM_UP = 20;
/** Time for a page to come to rest, ms. */
const REST = 1000;
/** Pixels that the pointer goes to and fro. */
const SWING = 24;

/** Times of one move, ms. */
interface Move {
  /** from the edit to its coat */
  readonly coat: number;
  /** from the pointer's event to the painted frame */
  readonly painted: number;
}

/** Where the page's script is told whom to call after the next move. */
type Timed = typeof globalThis & { tell?: (move: Move) => void };

export const middle = (values: readonly number[], share = 0.5): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ?? NaN;

export const howDrawn = (isDrawn: boolean): string => (isDrawn ? 'software drawing included' : 'drawing left out');

/** Takes the drawing out of WebGL, which this machine does in software, on the cores that compute. */
export function withoutDrawing(): void {
  const gl = WebGL2RenderingContext.prototype;
  for (const name of ['drawElements', 'drawArrays', 'drawElementsInstanced', 'drawArraysInstanced', 'clear'] as const) {
    Reflect.set(gl, name, () => {});
  }
}

/** Notes when a coat follows the pointer's last move, and when the frame after it has been painted. */
function timeMoves(): void {
  let pointer = NaN;
  addEventListener('pointermove', ({ timeStamp }) => (pointer = timeStamp), { capture: true });
  const measure = performance.measure.bind(performance);
  performance.measure = (name, options) => {
    const { start } = options as { readonly start: number };
    const [from, coat] = [pointer, performance.now() - start];
    if (name === 'evenfall: edit to coat') {
      // a task that is posted from a frame runs when that frame has been handed over
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => (globalThis as Timed).tell?.({ coat, painted: performance.now() - from });
        port2.postMessage(null);
      });
    }
    return measure(name, options as PerformanceMeasureOptions);
  };
}

/** Waits until a page has drawn its picture and its files are stored for use without a network. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.waitForTimeout(REST);
}

/** A design on a page, its first ring selected. */
export async function openDesign(site: Site, design: object, isDrawn: boolean): Promise<Page> {
  const { page } = await site.open();
  await page.addInitScript(timeMoves);
  if (!isDrawn) await page.addInitScript(withoutDrawing);
  await page.goto(`${site.address}?bench${packFragment(JSON.stringify(design))}`);
  await page.getByRole('treeitem', { name: /ring/ }).first().waitFor();
  await settled(page);
  return page;
}

/** Drags the handle of the first ring's diameter to and fro. */
async function drag(page: Page): Promise<Move[]> {
  await page.getByRole('treeitem', { name: /ring/ }).first().click();
  const box = await page.locator('[data-handle=diameter]').boundingBox();
  if (!box) throw new Error('the diameter has no handle on screen');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const moves: Move[] = [];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= WARM_UP + MOVES; i++) {
    // waited for in the page: to ask again and again would take its time away
    const told = page.evaluate(async () => new Promise<Move>((resolve) => ((globalThis as Timed).tell = resolve)));
    const way = i % (2 * SWING);
    await page.mouse.move(x - 3 * Math.min(way, 2 * SWING - way), y);
    moves.push(await told);
  }
  await page.mouse.up();
  return moves.slice(-MOVES);
}

const PLANTS = [
  { name: `the first preset's ring`, design: presets[0]!.file, goal: 8 },
  { name: 'a ring of 48 in 96 filaments × 6 loops', design: benchDesign(), goal: 16 },
  { name: 'a ring of 100 in 200 filaments × 6 loops', design: benchDesign({ count: 100 }), goal: 16 },
];

/** Medians and 95th percentiles of dragged rings. */
export async function dragRows(site: Site, isDrawn: boolean): Promise<Row[]> {
  const rows: Row[] = [];
  for (const { name, design, goal } of PLANTS) {
    const page = await openDesign(site, design, isDrawn);
    const moves = await drag(page);
    await page.context().close();
    for (const [to, what] of [
      ['coat', 'from edit to coat'],
      ['painted', 'from pointer to painted frame'],
    ] as const) {
      const times = moves.map((move) => move[to]);
      rows.push({
        what: `page, ${howDrawn(isDrawn)}: dragging ${name}, ${what}, median / 95th percentile`,
        figure: `${middle(times).toFixed(1)} / ${middle(times, 0.95).toFixed(1)} ms`,
        goal: to === 'coat' && !isDrawn ? `≤ ${goal} ms` : '',
      });
    }
  }
  return rows;
}
