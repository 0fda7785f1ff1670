import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { describe, expect, test } from 'vitest';
import { isShielded, type FilamentSource } from '../../../engine/emission/filamentSource.ts';
import { createFace } from '../../../engine/geometry/face.ts';
import { canGlassShade } from '../../../engine/geometry/glass.ts';
import { buildMeshSolid } from '../../../engine/geometry/mesh.ts';
import { createOrientedPoints, type OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import {
  casterCount,
  END_GAP,
  firstHitOfCaster,
  isOccludedByGlass,
  type Scene,
} from '../../../engine/geometry/scene.ts';
import { packSolids } from '../../../engine/geometry/solids.ts';
import { readStl } from '../../../engine/geometry/stl.ts';
import { computeArrival, computeColumns } from '../../../engine/transport/column.ts';
import { createPlainKernel, RUN } from '../../../engine/transport/depositKernel.ts';
import { addDepositInto } from '../../../engine/transport/depositKernels.ts';
import { findHiders } from '../../../engine/transport/hiders.ts';
import { patchesOf } from '../../../engine/transport/patches.ts';
import { createVisibility } from '../../../engine/transport/visibility.ts';
import { planeReceivers, pointSource, sceneOf, shapeOf, type Vector } from '../../support/plants.ts';
import { randomSolid, type SolidDesign } from '../../support/randomSolids.ts';
import { cubeStl } from '../../support/stl.ts';

const SHAPES = ['box', 'cylinder', 'tube', 'cone frustum', 'disc', 'annulus', 'sphere'] as const;

const BOWL = shapeOf({ curvature: 0.08, rimRadius: 1.2, holeRadius: 0.2 });
const FACE = createFace(BOWL, 1200).points;

/** A filament of loops in a row. */
function filament(middle: Vector, along: Vector, count: number): FilamentSource {
  const position = Array.from({ length: count }, (_, j) =>
    middle.map((x, k) => x + (j - (count - 1) / 2) * along[k as 0]),
  ).flat();
  return {
    count,
    position: Float64Array.from(position),
    axis: Float64Array.from({ length: 3 * count }, (_, k) => (k % 3 === 2 ? -1 : 0)),
    weight: new Float64Array(count).fill(1 / count),
    law: { kind: 'isotropic' },
    shield: null,
  };
}

/** Whether sub-source j is hidden from point i: every hider tried, without any short cut. */
function isHidden(scene: Scene, onFace: boolean, source: FilamentSource, j: number, p: Vector): boolean {
  const s = [source.position[3 * j]!, source.position[3 * j + 1]!, source.position[3 * j + 2]!] as const;
  const d = [p[0] - s[0], p[1] - s[1], p[2] - s[2]] as const;
  const { shield } = source;
  if (shield && isShielded(shield, ...d, Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]))) return true;
  if ((!onFace || canGlassShade(scene.glass, ...s)) && isOccludedByGlass(scene.glass, ...s, ...d)) return true;
  for (let c = 0; c < casterCount(scene); c++) {
    if (firstHitOfCaster(scene, c, ...s, ...d, END_GAP, 1 - END_GAP) < 1 - END_GAP) return true;
  }
  return false;
}

/** The column by the definition: deposits summed in order, each line of sight tested; and who is hidden where. */
function plainly(
  scene: Scene,
  onFace: boolean,
  source: FilamentSource,
  points: OrientedPoints,
): { readonly deposit: Float64Array; readonly hidden: string[] } {
  const deposit = new Float64Array(points.count);
  const hidden = Array.from({ length: points.count }, () => '');
  const alone = new Float64Array(points.count);
  for (let j = 0; j < source.count; j++) {
    addDepositInto(alone.fill(0), points, 0, points.count, source, j);
    for (let i = 0; i < points.count; i++) {
      const o = 3 * i;
      if (alone[i] === 0) continue;
      const p: Vector = [points.position[o]!, points.position[o + 1]!, points.position[o + 2]!];
      if (isHidden(scene, onFace, source, j, p)) hidden[i] += `${j} `;
      else deposit[i]! += alone[i]!;
    }
  }
  return { deposit, hidden };
}

/** Compares columns with the plain way, bit by bit, and returns how many lines of sight were found hidden. */
function expectPlain(scene: Scene, sources: readonly FilamentSource[], points: OrientedPoints, onFace = true): number {
  let hiddenCount = 0;
  computeColumns(sources, points, createVisibility(scene, onFace), createPlainKernel()).forEach((column, f) => {
    const plain = plainly(scene, onFace, sources[f]!, points);
    expect(column.deposit).toEqual(plain.deposit);
    const signatureOf = new Map<string, number>([['', 0]]);
    plain.hidden.forEach((who, i) => {
      const signature = column.signature?.[i] ?? 0;
      if (!signatureOf.has(who)) signatureOf.set(who, signature);
      if (signatureOf.get(who) !== signature) throw new Error(`point ${i}: same hidden loops, another signature`);
      hiddenCount += who.length / 2;
    });
    expect(new Set(signatureOf.values()).size).toBe(signatureOf.size);
  });
  return hiddenCount;
}

describe('columns with shadows are those of testing every line of sight, bit by bit', () => {
  test.each(SHAPES)('random scenes of %s and others', (shape) => {
    const random = xoroshiro128plus(SHAPES.indexOf(shape));
    const even = (): number => 2 * uniformFloat64(random) - 1;
    let hidden = 0;
    for (let k = 0; k < 6; k++) {
      const shapes = Array.from({ length: 4 }, (_, c) => (c === 0 ? shape : SHAPES[(k + c) % SHAPES.length]!));
      const solids = packSolids(shapes.map((each) => lift(randomSolid(each, even))));
      const sources = [
        filament([even(), even(), 1.2], [0.02, 0.01, 0], 4),
        filament([even(), 1.4 * even(), 0.9], [0, 0.1, 0.01], 3),
      ];
      hidden += expectPlain(sceneOf(BOWL, solids), sources, FACE);
    }
    expect(hidden).toBeGreaterThan(500);
  });

  test('shields of all widths, among obstacles', () => {
    const random = xoroshiro128plus(41);
    const even = (): number => 2 * uniformFloat64(random) - 1;
    let hidden = 0;
    for (const cosHalfAngle of [0.95, 0.7, 0.3, 0, -0.5]) {
      const length = Math.hypot(0.3, 0.4, 0.5);
      const shield = { direction: [0.3 / length, -0.4 / length, -0.5 / length], cosHalfAngle } as const;
      const solids = packSolids([lift(randomSolid('disc', even))]);
      hidden += expectPlain(sceneOf(BOWL, solids), [{ ...filament([-0.3, 0.2, 0.8], [0.02, 0, 0], 3), shield }], FACE);
    }
    expect(hidden).toBeGreaterThan(2000);
  });

  test('the mirror’s own rim, from beside and below', () => {
    const sources = [filament([1.25, 0, 0.05], [0, 0, 0.02], 3), filament([1.5, 0.2, -0.3], [0, 0, 0.3], 3)];
    expect(expectPlain(sceneOf(BOWL), sources, FACE)).toBeGreaterThan(500);
  });

  test('points anywhere, on either side of the glass', () => {
    const random = xoroshiro128plus(43);
    const even = (): number => 2 * uniformFloat64(random) - 1;
    const points = createOrientedPoints(700);
    for (let i = 0; i < points.count; i++) {
      points.position.set([1.5 * even(), 1.5 * even(), even()], 3 * i);
      points.normal.set([0, 0.6, 0.8], 3 * i);
    }
    const solids = packSolids([lift(randomSolid('cylinder', even))]);
    expect(
      expectPlain(sceneOf(BOWL, solids), [filament([0.3, 0.4, 1], [0.03, 0, 0], 2)], points, false),
    ).toBeGreaterThan(20);
  });

  test('a mesh', () => {
    const mesh = buildMeshSolid(
      readStl(cubeStl([0.5, 0.3, 0.2]), { scale: 1, position: [0.2, -0.1, 0.5], rotation: [0.2, 0.4, -0.7] }),
    );
    const sources = [filament([0.3, 0.2, 1.2], [0.02, 0, 0], 3), filament([-1.3, 0, 0.6], [0, 0.02, 0], 3)];
    expect(expectPlain(sceneOf(BOWL, packSolids([]), [mesh]), sources, FACE)).toBeGreaterThan(100);
  });
});

/** Moves a random solid from about the origin to between filaments and mirror. */
function lift(solid: SolidDesign): SolidDesign {
  const up = ([x, y, z]: Vector): [number, number, number] => [x, y, z + 0.6];
  return 'from' in solid
    ? { ...solid, from: up(solid.from), to: up(solid.to) }
    : { ...solid, center: up(solid.center) };
}

describe('special scenes are as plain as any', () => {
  const ball = (center: Vector, diameter: number): SolidDesign => ({
    shape: 'sphere',
    name: 'x',
    center: [...center],
    diameter,
  });
  const rod = (from: Vector, to: Vector): SolidDesign => ({
    shape: 'cylinder',
    name: 'x',
    from: [...from],
    to: [...to],
    diameter: 0.1,
  });
  const source = filament([0.4, 0, 0.8], [0.02, 0, 0], 3);

  test.each<[string, SolidDesign]>([
    ['the source inside the ball around a rod', rod([-1, 0, 0.6], [1.5, 0, 0.6])],
    ['the source inside a solid', ball([0.4, 0, 0.8], 0.3)],
    ['a solid that touches the source', ball([0.4, 0, 0.7], 0.2)],
    ['a solid on the mirror', rod([0.5, 0.2, 0], [0.5, 0.2, 0.3])],
    ['a solid behind the mirror', ball([0.2, 0.2, -0.5], 0.6)],
    ['a solid around everything', ball([0, 0, 0.4], 6)],
  ])('%s', (_, solid) => {
    for (const points of [FACE, planeReceivers([[0.5, 0.1]])])
      expectPlain(sceneOf(BOWL, packSolids([solid])), [source], points);
  });

  test.each([1, 2, 16, 17, RUN, RUN + 1])('a set of %i points', (count) => {
    const points = planeReceivers(
      Array.from({ length: count }, (_, i) => [0.9 * Math.cos(i), 0.9 * Math.sin(i)] as const),
      0.3,
    );
    expectPlain(sceneOf(BOWL, packSolids([ball([0.3, 0.2, 0.5], 0.5)])), [source], points);
  });

  test('points all in one place', () => {
    const points = planeReceivers(
      Array.from({ length: 40 }, () => [0.2, 0.4] as const),
      0.1,
    );
    expectPlain(sceneOf(BOWL, packSolids([ball([0.3, 0.2, 0.45], 0.3)])), [source], points);
  });

  test('no points at all', () => {
    const scene = sceneOf(BOWL, packSolids([ball([0.3, 0.2, 0.5], 0.5)]));
    expect(
      computeColumns([source], createOrientedPoints(0), createVisibility(scene), createPlainKernel())[0]!.deposit
        .length,
    ).toBe(0);
  });
});

test('what touches no line of sight is no hider, and leaves no signature', () => {
  const source = filament([1, 0, 0.9], [0, 0.02, 0], 6);
  const idle: readonly SolidDesign[] = [
    { shape: 'cylinder', name: 'a rod above', from: [1, -1, 1.2], to: [1, 1, 1.3], diameter: 0.05 },
    { shape: 'tube', name: 'a liner', from: [0, 0, -0.2], to: [0, 0, 2], diameter: 4 },
    { shape: 'annulus', name: 'a ledge', center: [0, 0, 0.4], normal: [0, 0, 1], innerDiameter: 3.6, outerDiameter: 4 },
    { shape: 'box', name: 'a lid', center: [0, 0, 1.5], size: [3, 3, 0.1], rotation: undefined },
  ];
  for (const solid of idle) {
    const visibility = createVisibility(sceneOf(BOWL, packSolids([solid])));
    expect(findHiders(visibility, source, FACE, patchesOf(FACE))).toBeNull();
    expect(computeColumns([source], FACE, visibility, createPlainKernel())[0]!.signature).toBeNull();
  }
});

test('angles of arrival leave out what is hidden', () => {
  const source = pointSource({ kind: 'isotropic' }, [0.2, 0.1, 1]);
  const disc: SolidDesign = { shape: 'disc', name: 'x', center: [0.1, 0, 0.5], normal: [0, 0, 1], diameter: 0.5 };
  const scene = sceneOf(BOWL, packSolids([disc]));
  const [bare, shaded] = [sceneOf(BOWL), scene].map((each) => computeArrival(source, FACE, createVisibility(each)));
  const { deposit } = computeColumns([source], FACE, createVisibility(scene), createPlainKernel())[0]!;
  expect(deposit.filter((value) => value === 0).length).toBeGreaterThan(50);
  expect(shaded!.angle).toEqual(bare!.angle.map((value, i) => (deposit[i] === 0 ? 0 : value)));
  expect(shaded!.grazing).toEqual(bare!.grazing.map((value, i) => (deposit[i] === 0 ? 0 : value)));
});
