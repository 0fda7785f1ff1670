import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { expect, test } from 'vitest';
import { buildMeshSolid } from '../../../engine/geometry/mesh.ts';
import { readStl } from '../../../engine/geometry/stl.ts';
import { firstHitOfSolid, packSolids } from '../../../engine/geometry/solids.ts';
import { cubeStl, textStl } from '../../support/stl.ts';

/** Corners in single precision are off by 6e-8 at 1 m; a ray at 0.5° to a face stretches that a hundredfold. */
const SINGLE = 1e-5;

test('a cube read from an STL is the analytic box to every ray, but for its edges', () => {
  const rotation = [0.3, -0.5, 1.1] as const;
  const [center, size] = [[0.2, -0.1, 0.9] as const, [0.6, 0.4, 0.25] as const];
  const mesh = buildMeshSolid(
    readStl(cubeStl(size.map((side) => side * 1000)), { scale: 1e-3, position: center, rotation }),
  );
  const box = packSolids([
    { shape: 'box', name: 'box', center: [...center], size: [...size], rotation: [...rotation] },
  ]);
  const random = xoroshiro128plus(2024);
  const even = (): number => 2 * uniformFloat64(random) - 1;
  let [hits, undecided] = [0, 0];
  for (let k = 0; k < 40_000; k++) {
    const o = [2 * even(), 2 * even(), 2 * even()] as const;
    const d = [0.35 * even() + 0.2 - o[0], 0.35 * even() - 0.1 - o[1], 0.35 * even() + 0.9 - o[2]] as const;
    const exact = firstHitOfSolid(box, 0, ...o, ...d, 1e-9);
    const found = mesh.firstHit(...o, ...d, 1e-9, Infinity);
    if (exact < Infinity) hits++;
    if ((exact === Infinity) !== (found === Infinity)) undecided++;
    else if (exact < Infinity) expect(Math.abs(found - exact)).toBeLessThan(SINGLE);
  }
  expect(hits).toBeGreaterThan(10_000);
  expect(undecided).toBeLessThan(4); // rays within a micrometre of an edge
});

test('a mesh answers only between the ends of a line of sight', () => {
  const mesh = buildMeshSolid(readStl(cubeStl([1, 1, 1]), { scale: 1, position: [0, 0, 2], rotation: undefined }));
  expect(mesh.firstHit(0.1, 0.2, 0, 0, 0, 1, 0, Infinity)).toBeCloseTo(1.5, 6);
  expect(mesh.firstHit(0.1, 0.2, 0, 0, 0, 2, 0, Infinity)).toBeCloseTo(0.75, 6);
  expect(mesh.firstHit(0.1, 0.2, 0, 0, 0, 1, 0, 1.4)).toBe(Infinity);
  expect(mesh.firstHit(0.1, 0.2, 0, 0, 0, 1, 2, Infinity)).toBeCloseTo(2.5, 6);
  expect(mesh.firstHit(0.1, 0.2, 0, 0, 0, -1, 0, Infinity)).toBe(Infinity);
});

test('text and binary STL files are the same mesh', () => {
  const placement = { scale: 1, position: [0, 0, 0], rotation: undefined } as const;
  const [binary, text] = [cubeStl([1, 2, 3]), textStl([1, 2, 3])].map((bytes) => readStl(bytes, placement).position);
  expect(text).toEqual(binary);
});

test('what is no STL file is refused with a sentence', () => {
  const placement = { scale: 1, position: [0, 0, 0], rotation: undefined } as const;
  expect(() => readStl(new Uint8Array(0), placement)).toThrow(/expected an STL file/);
  expect(() => readStl(new TextEncoder().encode('solid nothing\nendsolid nothing\n'), placement)).toThrow(
    /expected an STL file/,
  );
});
