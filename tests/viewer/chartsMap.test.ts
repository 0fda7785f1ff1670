import { describe, expect, test } from 'vitest';
import { createFace, refineFace } from '../../engine/geometry/face.ts';
import { scaleOf } from '../../viewer/format/mapScale.ts';
import { contourLines, lengthOf } from '../../workers/picture/contourLines.ts';
import { filamentsAround, mapReach, outlinePath, toPicture, toPlace } from '../../workers/picture/frame.ts';
import { inkOn, paintRaster } from '../../workers/picture/paint.ts';
import { placeBeside, placeOnLine, withoutStretch, type Box } from '../../workers/picture/placeLabels.ts';
import { grownRaster, rasterMap } from '../../workers/picture/rasterMap.ts';
import { decimalsOf, exactScale, extentOf, roundScale, symmetricScale } from '../../workers/picture/valueScale.ts';
import { oneSource, plantOf, shapeOf } from '../support/plants.ts';

/** A few sums and products. */
const ROUNDING = 1e-12;
/** A pixel's middle misses the node by some 1e-16 m; the field changes by 40 per metre. */
const AT_NODE = 1e-9;
/** 20 000 points: a radius read off linear pieces of r²; measured 1.7e-4 m at most. */
const LINEAR_PIECES = 2e-4;

const annulus = createFace(shapeOf({ holeRadius: 0.25 }), 5000);
const fieldOf = (face: typeof annulus, f: (x: number, y: number) => number): Float64Array =>
  Float64Array.from({ length: face.points.count }, (_, i) =>
    f(face.points.position[3 * i]!, face.points.position[3 * i + 1]!),
  );

describe('the raster', () => {
  test('has the exact values at nodes', () => {
    const wild = fieldOf(annulus, (x, y) => Math.sin(40 * x) + Math.cos(31 * y * x));
    const size = 401;
    for (let node = 1; node + 1 < annulus.radialCount; node++) {
      // a picture in which the node, which lies at azimuth 0, is the middle of pixel 360 of the middle row
      const reach = annulus.points.position[3 * node]! / ((2 * 360 + 1) / size - 1);
      const { values } = rasterMap(annulus, wild, reach, size);
      expect(Math.abs(values[size * 200 + 360]! - wild[node]!)).toBeLessThan(AT_NODE);
    }
  });

  test('is exact for a linear field, and empty off the glass', () => {
    const size = 120;
    const reach = 1.1;
    const { values } = rasterMap(
      annulus,
      fieldOf(annulus, (x, y) => 2 * x - 3 * y + 1),
      reach,
      size,
    );
    let filled = 0;
    values.forEach((value, i) => {
      const x = (((i % size) + 0.5) / size) * 2 * reach - reach;
      const y = reach - ((Math.floor(i / size) + 0.5) / size) * 2 * reach;
      if (Math.hypot(x, y) > 1 || Math.hypot(x, y) < 0.249) expect(value).toBeNaN();
      if (Number.isNaN(value)) return;
      filled++;
      expect(Math.abs(value - (2 * x - 3 * y + 1))).toBeLessThan(ROUNDING);
    });
    expect(filled / size ** 2).toBeCloseTo((Math.PI * (1 - 0.25 ** 2)) / 2.2 ** 2, 2);
  });

  test('fills a refined face without gaps', () => {
    const { face } = refineFace(annulus, [3, 4, 40]);
    const values = fieldOf(face, (x, y) => x + y);
    const before = rasterMap(
      annulus,
      fieldOf(annulus, (x, y) => x + y),
      1.1,
      150,
    ).values;
    rasterMap(face, values, 1.1, 150).values.forEach((value, i) => {
      expect(Number.isNaN(value)).toBe(Number.isNaN(before[i]));
    });
  });

  test('grows only where it may', () => {
    const values = new Float64Array(25).fill(NaN);
    values[12] = 3;
    const grown = grownRaster({ size: 5, values }, 1, (i) => i !== 7).values;
    expect(Array.from(grown.slice(5, 10))).toEqual([NaN, 3, NaN, 3, NaN]);
    expect(grown.filter((value) => value === 3)).toHaveLength(8);
  });

  test('is painted by its scale, hatched where bare, transparent off the glass', () => {
    const raster = { size: 2, values: Float64Array.of(0, 10, NaN, 5) };
    const bytes = paintRaster(raster, Uint8Array.of(0, 0, 0, 1), exactScale(0, 10), 'even');
    // ends of the cividis map as published by Nuñez, Anderton, Renslow (2018), in d3's rounding
    expect(Array.from(bytes.slice(0, 8))).toEqual([0, 32, 81, 255, 253, 234, 69, 255]);
    expect(bytes[11]).toBe(0);
    expect(new Set(bytes.slice(12, 15)).size).toBeLessThanOrEqual(3);
    expect(bytes[15]).toBe(255);
    expect([inkOn('even', 0), inkOn('even', 1)]).toEqual(['#ffffff', '#000000']);
  });
});

describe('contours', () => {
  const fine = createFace(shapeOf(), 20_000);
  const size = 420;
  const reach = 1.05;
  const bowl = rasterMap(
    fine,
    fieldOf(fine, (x, y) => x * x + y * y),
    reach,
    size,
  );

  test.each([0.2, 0.5, 0.9])('of a bowl at radius %d are that circle', (radius) => {
    const lines = contourLines(bowl, [radius * radius]);
    expect(lines).toHaveLength(1);
    const [line] = lines;
    expect(line?.isClosed).toBe(true);
    const perPixel = (2 * reach) / size;
    for (const [x, y] of line?.points ?? []) {
      const r = Math.hypot(x * perPixel - reach, y * perPixel - reach);
      expect(Math.abs(r - radius)).toBeLessThan(LINEAR_PIECES);
    }
    expect(lengthOf(line?.points ?? []) * perPixel).toBeCloseTo(2 * Math.PI * radius, 2);
  });

  test('do not run along the rim or the hole', () => {
    const plain = rasterMap(annulus, new Float64Array(annulus.points.count).fill(1), 1.05, 200);
    expect(contourLines(plain, [0.5, 1])).toEqual([]);
    const slope = rasterMap(
      annulus,
      fieldOf(annulus, (x) => x),
      1.05,
      200,
    );
    const lines = contourLines(slope, [0.1]);
    expect(lines).toHaveLength(2); // the hole parts the line
    for (const { points, isClosed } of lines) {
      expect(isClosed).toBe(false);
      for (const [x] of points) expect((x / 200) * 2.1 - 1.05).toBeCloseTo(0.1, 9);
    }
  });

  test('leave room for their labels and for each other', () => {
    const taken: Box[] = [];
    const bounds: Box = [0, 0, 400, 400];
    const points = Array.from({ length: 200 }, (_, i): [number, number] => [2 * i, 200]);
    const labels = [1, 2, 3].map(() => placeOnLine(points, '100', 12, taken, bounds));
    for (const label of labels) expect(label).toMatchObject({ y: 200, turn: 0 });
    expect(taken).toHaveLength(3);
    taken.forEach(([left, , right], i) => {
      for (const [l, , r] of taken.slice(i + 1)) expect(right <= l || r <= left).toBe(true);
    });
    const [before = [], after = []] = withoutStretch(points, 100, 150);
    expect(before.at(-1)).toEqual([100, 200]);
    expect(after[0]).toEqual([150, 200]);
    expect(placeOnLine(points.slice(0, 5), '100', 12, [], bounds)).toBeNull();
  });

  test('labels beside a point stay in the picture', () => {
    const taken: Box[] = [];
    const right = placeBeside(395, 200, 'thickest 125 nm', 12, taken, [0, 0, 400, 400]);
    expect(right.x).toBeLessThan(350);
    const next = placeBeside(395, 200, 'another name', 12, taken, [0, 0, 400, 400]);
    expect(next.y).not.toBe(right.y);
  });
});

describe('the scale', () => {
  test.each([
    [69.58, 124.97],
    [0, 0],
    [100, 100.0001],
    [-31, 24],
    [0, 3],
    [-3e-9, 2e-9],
  ])('from %d to %d is the scene’s', (low, high) => {
    const values = Float64Array.of(low, high);
    expect(roundScale(extentOf(values))).toEqual(
      scaleOf(values, { quantity: 'thickness', range: { mode: 'automatic' }, fromZero: false }),
    );
  });

  test('of a difference has zero in its middle', () => {
    const { low, high, ticks } = symmetricScale([-30.6, 25.9], 0.2);
    expect([low, high]).toEqual([-40, 40]);
    expect(ticks).toContain(0);
    expect(symmetricScale([0, 0], 0.2)).toMatchObject({ low: -0.1, high: 0.1 });
  });

  test('knows the decimals of its ticks', () => {
    expect(decimalsOf([60, 70])).toBe(0);
    expect(decimalsOf([0.1, 0.30000000000000004])).toBe(1);
    expect(decimalsOf([0.25, 0.5])).toBe(2);
  });
});

describe('the frame', () => {
  const ring = (diameter: string) =>
    plantOf({
      mirror: { radiusOfCurvature: '10 m', conicConstant: -1, outerDiameter: '2 m', holeDiameter: '0.4 m' },
      tank: { diameter: '6 m', depth: '3 m' },
      filamentTypes: {
        four: { loops: 4, length: '60 mm', clipMass: '60 mg', clipsPerLoop: 1, emission: { law: 'open coil' } },
      },
      filaments: [{ arrangement: 'ring', name: 'outer', type: 'four', count: 12, diameter, height: '1 m' }],
    });

  test('goes there and back', () => {
    const frame = { centerX: 0.3, reach: 1.2, size: 500, left: 10, top: 20 };
    expect(toPicture(frame, 0.3, 0)).toEqual([260, 270]);
    const [x, y] = toPlace(frame, ...toPicture(frame, 0.7, -0.4));
    expect(Math.abs(x - 0.7)).toBeLessThan(ROUNDING);
    expect(Math.abs(y + 0.4)).toBeLessThan(ROUNDING);
  });

  test('takes filaments in that lie just outside the rim, and leaves farther ones out', () => {
    expect(filamentsAround(ring('2.2 m'))).toHaveLength(12);
    expect(mapReach(ring('2.2 m'))).toBeCloseTo(1.1 * 1.03, 9);
    expect(filamentsAround(ring('3 m'))).toHaveLength(0);
    expect(filamentsAround(ring('1.6 m'))).toHaveLength(0);
    expect(mapReach(ring('3 m'))).toBeCloseTo(1.03, 9);
  });

  test('draws a hexagon with its corners and a round hole', () => {
    const { shape } = plantOf({
      mirror: { radiusOfCurvature: '10 m', conicConstant: -1, outerDiameter: '2 m', outline: 'hexagon' },
      tank: { diameter: '6 m', depth: '3 m' },
      ...oneSource([0, 0, 1], { law: 'isotropic' }),
    });
    const frame = { centerX: 0, reach: 1, size: 100, left: 0, top: 0 };
    expect(outlinePath(frame, shape).match(/[ML]/g)).toHaveLength(6);
    expect(outlinePath(frame, shapeOf({ holeRadius: 0.2 })).match(/M/g)).toHaveLength(2);
  });
});
