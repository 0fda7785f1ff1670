import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { expect, test } from 'vitest';
import { buildMeshSolid } from '../../../engine/geometry/mesh.ts';
import { readStl } from '../../../engine/geometry/stl.ts';
import { firstHitOfSolid, packSolids } from '../../../engine/geometry/solids.ts';
import { cubeStl, textStl } from '../../support/stl.ts';

/** Corners in single precision are off by 6e-8 at 1 m; a ray at 0.5° to a face stretches that a hundredfold. */
const SINGLE = 1e-5;

/** A few roundings of a length of 2 m. */
const ROUNDING = 1e-15;
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

/** Triangles of a lumpy ball about the origin: closed, with corners and edges in every direction. */
function lumpyBall(steps: number): Float32Array<ArrayBuffer> {
  const corner = (i: number, k: number): number[] => {
    const [polar, azimuth] = [(Math.PI * i) / steps, (Math.PI * (k % (2 * steps))) / steps];
    const across = i % steps === 0 ? 0 : Math.sin(polar); // exactly one place at either pole
    const r = 0.5 + 0.1 * across * Math.cos(5 * azimuth);
    return [across * Math.cos(azimuth), across * Math.sin(azimuth), Math.cos(polar)].map((x) => r * x);
  };
  const corners: number[] = [];
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < 2 * steps; k++) {
      const [a, b, c, d] = [corner(i, k), corner(i + 1, k), corner(i + 1, k + 1), corner(i, k + 1)] as const;
      // the two poles are one corner each
      if (i > 0) corners.push(...a, ...c, ...d);
      if (i < steps - 1) corners.push(...a, ...b, ...c);
    }
  }
  return Float32Array.from(corners);
}

test('no ray slips out of a closed mesh, not even one aimed at a corner or an edge', () => {
  const position = lumpyBall(24);
  const mesh = buildMeshSolid({ position });
  const random = xoroshiro128plus(8);
  let slipped = 0;
  for (let k = 0; k < position.length; k += 3) {
    const next = k % 9 === 6 ? k - 6 : k + 3; // the corner that follows on the same triangle
    const share = uniformFloat64(random);
    const aim = (axis: number): number => (1 - share) * position[k + axis]! + share * position[next + axis]!;
    const [x, y, z] = [0.01 * share, 0.02, -0.01];
    if (!mesh.isHit(x, y, z, position[k]! - x, position[k + 1]! - y, position[k + 2]! - z, 0, 2)) slipped++;
    if (!mesh.isHit(x, y, z, aim(0) - x, aim(1) - y, aim(2) - z, 0, 2)) slipped++;
  }
  expect(slipped).toBe(0);
});

test('some hit is found where the first is, and the first is that of testing every triangle alone', () => {
  const position = lumpyBall(8);
  const mesh = buildMeshSolid({ position });
  const alone = Array.from({ length: position.length / 9 }, (_, k) =>
    buildMeshSolid({ position: position.slice(9 * k, 9 * k + 9) }),
  );
  const random = xoroshiro128plus(9);
  const even = (): number => 2 * uniformFloat64(random) - 1;
  let hits = 0;
  for (let k = 0; k < 1500; k++) {
    const ray = [even(), even(), even(), even(), even(), even()] as const;
    const tMax = 1 + even();
    const first = Math.min(...alone.map((triangle) => triangle.firstHit(...ray, 0.1, tMax)));
    expect(mesh.firstHit(...ray, 0.1, tMax)).toBe(first);
    expect(mesh.isHit(...ray, 0.1, tMax)).toBe(first < Infinity);
    if (first < Infinity) hits++;
  }
  expect(hits).toBeGreaterThan(100);
});

test('a ray in the plane of a box’s side finds the box, and one along an axis too', () => {
  const mesh = buildMeshSolid(readStl(cubeStl([1, 1, 1]), { scale: 1, position: [0, 0, 0], rotation: undefined }));
  expect(Math.abs(mesh.firstHit(-2, 0.5, 0.2, 1, 0, 0, 0, Infinity) - 1.5)).toBeLessThan(ROUNDING);
  expect(Math.abs(mesh.firstHit(-2, 0, 0, 1, 0, 0, 0, Infinity) - 1.5)).toBeLessThan(ROUNDING);
  expect(mesh.isHit(-2, 0.51, 0.2, 1, 0, 0, 0, Infinity)).toBe(false);
});

test('a beam said to be clear of a mesh hits it along none of its lines', () => {
  const mesh = buildMeshSolid({ position: lumpyBall(12) });
  const random = xoroshiro128plus(10);
  const even = (): number => 2 * uniformFloat64(random) - 1;
  const [fromRadius, toRadius] = [0.1, 0.3];
  let [clear, wrong] = [0, 0];
  for (let k = 0; k < 6000; k++) {
    const [x, y, u, v] = [even(), even(), even(), even()];
    if (!mesh.isClearOf(Float64Array.of(x, y, 1.5, fromRadius, u, v, -1.5, toRadius))) continue;
    clear++;
    for (let line = 0; line < 10; line++) {
      // corners of cubes inside the balls: 1/√3 of their radii
      const off = [even(), even(), even(), even(), even(), even()].map((share) => share / Math.sqrt(3));
      const [sx, sy, sz] = [x + fromRadius * off[0]!, y + fromRadius * off[1]!, 1.5 + fromRadius * off[2]!];
      const [px, py, pz] = [u + toRadius * off[3]!, v + toRadius * off[4]!, -1.5 + toRadius * off[5]!];
      if (mesh.isHit(sx, sy, sz, px - sx, py - sy, pz - sz, 0, 1)) wrong++;
    }
  }
  expect(wrong).toBe(0);
  expect(clear).toBeGreaterThan(500);
});

test('the smaller the triangles, the fewer lines are called neither clear nor hit', () => {
  const shares = [6, 12, 24, 48].map((steps) => {
    const mesh = buildMeshSolid({ position: lumpyBall(steps) });
    const random = xoroshiro128plus(11);
    const even = (): number => 2 * uniformFloat64(random) - 1;
    let [missing, open] = [0, 0];
    for (let k = 0; k < 3000; k++) {
      const [x, y, u, v] = [even(), even(), even(), even()];
      const isClear = mesh.isClearOf(Float64Array.of(x, y, 1.5, 0, u, v, -1.5, 0));
      const isHit = mesh.isHit(x, y, 1.5, u - x, v - y, -3, 0, 1);
      expect(isHit && isClear).toBe(false);
      if (!isHit) missing++;
      if (!isHit && !isClear) open++;
    }
    return open / missing;
  });
  // boxes of half the size line the outline with half the area
  shares.slice(1).forEach((share, k) => expect(share).toBeLessThan(0.75 * shares[k]!));
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
