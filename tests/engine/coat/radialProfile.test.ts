import { expect, test } from 'vitest';
import { radialProfile } from '../../../engine/coat/radialProfile.ts';
import { createFace, type Face } from '../../../engine/geometry/face.ts';
import { shapeOf } from '../../support/plants.ts';

type Field = (r: number, angle: number) => number;
const ROUNDING = 1e-13;

function valuesOn(face: Face, field: Field): Float64Array {
  const { position, count } = face.points;
  return Float64Array.from({ length: count }, (_, i) => {
    const [x, y] = [position[3 * i]! - face.grid.shape.centerX, position[3 * i + 1]!];
    return field(Math.hypot(x, y), Math.atan2(y, x));
  });
}

test('the profile of a round coat is the coat', () => {
  for (const centerX of [0, 2]) {
    const face = createFace(shapeOf({ holeRadius: 0.2, centerX }), 3000);
    const field: Field = (r) => 1 + 0.3 * r * r - 0.1 * r;
    const { radius, mean, minimum, maximum } = radialProfile(face, valuesOn(face, field));
    expect(Math.abs(radius[0]! - 0.2)).toBeLessThan(ROUNDING);
    expect(Math.abs(radius.at(-1)! - 1)).toBeLessThan(ROUNDING);
    radius.forEach((r, i) => {
      if (i > 0) expect(r).toBeGreaterThan(radius[i - 1]!);
      for (const value of [mean[i]!, minimum[i]!, maximum[i]!])
        expect(Math.abs(value - field(r, 0))).toBeLessThan(ROUNDING);
    });
  }
});

test('ripples in azimuth leave the mean and open the band', () => {
  const face = createFace(shapeOf(), 20_000);
  const { radius, mean, minimum, maximum } = radialProfile(
    face,
    valuesOn(face, (r, angle) => 1 + 0.1 * r * Math.cos(3 * angle)),
  );
  // three waves on some 30 panels: their mean cancels to rounding; the crests fall on nodes at 0°, the troughs within a step
  const step = (2 * Math.PI) / (face.azimuthCount / 4) / 3;
  radius.forEach((r, i) => {
    expect(Math.abs(mean[i]! - 1)).toBeLessThan(1e-12);
    expect(Math.abs(maximum[i]! - (1 + 0.1 * r))).toBeLessThan(ROUNDING);
    expect(minimum[i]! - (1 - 0.1 * r)).toBeGreaterThan(-ROUNDING);
    expect(minimum[i]! - (1 - 0.1 * r)).toBeLessThan(0.1 * r * (3 * step) ** 2 + ROUNDING);
  });
});

test('on a hexagon only the azimuths that reach a radius count there', () => {
  const face = createFace(shapeOf({ cornerAngle: 0.2, holeRadius: 0.1 }), 4000);
  const field: Field = (r) => 2 - r ** 3;
  const { radius, mean, minimum, maximum } = radialProfile(face, valuesOn(face, field));
  expect(Math.abs(radius.at(-1)! - 1)).toBeLessThan(1e-12); // out to a corner
  radius.forEach((r, i) => {
    // a cubic in r is a cubic along every azimuth: the quartic through five nodes is exact
    for (const value of [mean[i]!, minimum[i]!, maximum[i]!]) expect(Math.abs(value - field(r, 0))).toBeLessThan(1e-11);
  });
});
