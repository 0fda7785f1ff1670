/** Draws the PNG icons from icon.svg; run it after a change of the drawing: `npx tsx viewer/offline/drawIcons.ts`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';

const PUBLIC = new URL('../public/', import.meta.url);
/** A system may cut a maskable icon to a circle of 80 % of its width: the drawing is made smaller, its ground is not. */
const SAFE = 0.72;
/** Middle of what is drawn on the ground, in the units of the drawing, which is 32 wide. */
const MIDDLE_Y = 20;

/** The drawing on a ground without rounded corners, within the safe circle. */
function maskable(svg: string): string {
  const [x, y] = [16 * (1 - SAFE), 16 - MIDDLE_Y * SAFE];
  return svg
    .replace(' rx="7"', '')
    .replace(/(<rect[^>]*\/>)/, `$1<g transform="translate(${x} ${y}) scale(${SAFE})">`)
    .replace('</svg>', '</g></svg>');
}

function draw(svg: string, size: number, name: string): void {
  const picture = new Resvg(svg, { fitTo: { mode: 'width', value: size } }).render();
  writeFileSync(new URL(name, PUBLIC), picture.asPng());
}

const require = createRequire(import.meta.url);
await initWasm(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm')));
const svg = readFileSync(new URL('icon.svg', PUBLIC), 'utf8');
draw(svg, 192, 'icon-192.png');
draw(svg, 512, 'icon-512.png');
draw(maskable(svg), 512, 'icon-maskable-512.png');
