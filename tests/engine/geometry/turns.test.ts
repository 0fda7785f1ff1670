import { expect, test } from 'vitest';
import { createFaceGrid } from '../../../engine/geometry/faceGrid.ts';
import { sectorsOf, turnsOf } from '../../../engine/geometry/turns.ts';
import { plantOf, shapeOf, type DesignPart } from '../../support/plants.ts';

const metres = (...values: number[]): string[] => values.map((value) => `${value} m`);

/** Things made at each of n azimuths, the first at `start`. */
function around(n: number, make: (cos: number, sin: number, degrees: number) => DesignPart, start = 0): DesignPart[] {
  return Array.from({ length: n }, (_, k) => {
    const angle = start + (2 * Math.PI * k) / n;
    return { name: `part ${k}`, ...make(Math.cos(angle), Math.sin(angle), (angle * 180) / Math.PI) };
  });
}

const rod = (cos: number, sin: number): DesignPart => ({
  shape: 'cylinder',
  from: metres(0.4 * cos, 0.4 * sin, 0.5),
  to: metres(0.6 * cos, 0.6 * sin, 0.7),
  diameter: '30 mm',
});
const vane = (cos: number, sin: number, degrees: number): DesignPart => ({
  shape: 'box',
  center: metres(0.4 * cos, 0.4 * sin, 0.4),
  size: ['0.5 m', '10 mm', '60 mm'],
  rotation: ['0 deg', '0 deg', `${degrees} deg`],
});
const ball = (cos: number, sin: number): DesignPart => ({
  shape: 'sphere',
  center: metres(0.3 * cos, 0.3 * sin, 0.6),
  diameter: '0.1 m',
});
const hub: DesignPart = {
  shape: 'cone frustum',
  name: 'hub',
  from: metres(0, 0, 0.3),
  to: metres(0, 0, 0.5),
  fromDiameter: '0.2 m',
  toDiameter: '0.1 m',
};
const disc = (x: number): DesignPart => ({
  shape: 'disc',
  name: 'disc',
  center: metres(x, 0, 0.6),
  normal: [0, 0, -1],
  diameter: '0.3 m',
});

const turnsIn = (obstacles: readonly DesignPart[], sectors: number): number =>
  turnsOf(
    plantOf({
      mirror: { radiusOfCurvature: '12 m', conicConstant: -1, outerDiameter: '2.6 m' },
      tank: { diameter: '3.6 m', depth: '2 m' },
      filamentTypes: { one: { loops: 1, length: '20 mm', clipMass: '40 mg', emission: { law: 'isotropic' } } },
      filaments: [{ arrangement: 'ring', name: 'ring', type: 'one', count: 4, diameter: '3 m', height: '1 m' }],
      obstacles,
    }).solids,
    sectors,
  );

test.each([
  ['nothing', [], 72, 72],
  ['a hub on the axis', [hub, disc(0)], 72, 72],
  ['a disc beside it', [hub, disc(0.1)], 72, 1],
  ['three rods', around(3, rod), 72, 3],
  ['six balls at any azimuth', around(6, ball, 0.3), 72, 6],
  ['a vane across, which half a turn brings to itself', around(2, vane), 72, 2],
  ['four vanes and a hub', [hub, ...around(4, vane, 0.1)], 72, 4],
  ['four vanes and three rods', [...around(4, vane), ...around(3, rod)], 72, 1],
  ['eight balls, two of whose turns the face allows', around(8, ball), 6, 2],
  ['five rods, none of whose turns the face allows', around(5, rod), 72, 1],
] as const)('turns that leave obstacles as they are: %s', (_, obstacles, sectors, expected) => {
  const named = obstacles.map((obstacle, i) => ({ ...obstacle, name: `obstacle ${i}` }));
  expect(turnsIn(named, sectors)).toBe(expected);
});

test('a face has as many sectors as its outline and its surface allow', () => {
  const sectors = (overrides: Parameters<typeof shapeOf>[0]): number =>
    sectorsOf(createFaceGrid(shapeOf(overrides), 20_000));
  expect(sectors({}) % 12).toBe(0);
  expect(sectors({ cornerAngle: 0.2 })).toBe(6);
  expect(sectors({ centerX: 0.5 })).toBe(1);
});
