import { describe, expect, test } from 'vitest';
import { gap, oneFilament, ROUNDING, sampleFilaments, vectorAt } from './samplePlant.ts';

const DEGREE = Math.PI / 180;
/** clock angle 30° at radius 0.8 m, where out is (cos 30°, sin 30°, 0) */
const AT = [0.8 * Math.cos(30 * DEGREE), 0.8 * Math.sin(30 * DEGREE), 1];
const OUT = [Math.cos(30 * DEGREE), Math.sin(30 * DEGREE), 0];
const IN = OUT.map((x) => -x);

const axisFor = (emission: object, own = {}): number[] => vectorAt(oneFilament(AT, { emission }, own).source.axis, 0);

describe('the emission axis', () => {
  test.each(['straight wire', 'open coil', 'isotropic'])('of "%s" is the coil axis', (law) => {
    expect(gap(axisFor({ law }, { axis: [0, 3, 4] }), [0, 0.6, 0.8])).toBeLessThan(ROUNDING);
  });

  test('of a cosine power points toward the mirror unless given', () => {
    expect(gap(axisFor({ law: 'cosine power' }), [0, 0, -1])).toBeLessThan(ROUNDING);
  });

  test.each([
    ['toward mirror', [0, 0, -1]],
    ['away from mirror', [0, 0, 1]],
    ['inward', IN],
    ['outward', OUT],
    [
      [1, 2, -2],
      [1 / 3, 2 / 3, -2 / 3],
    ],
  ])('aimed %s is that', (direction, expected) => {
    expect(gap(axisFor({ law: 'cosine power', direction }), expected)).toBeLessThan(ROUNDING);
  });

  test.each([0, 10, 45, 90, -20])('tilted by %i° leans toward the axis of the mirror', (tilt) => {
    const [sin, cos] = [Math.sin(tilt * DEGREE), Math.cos(tilt * DEGREE)];
    const axis = axisFor({ law: 'cosine power', tilt: `${tilt} deg` });
    expect(gap(axis, [-sin * (OUT[0] ?? 0), -sin * (OUT[1] ?? 0), -cos])).toBeLessThan(ROUNDING);
    expect(Math.abs(Math.hypot(...axis) - 1)).toBeLessThan(ROUNDING);
  });

  test('tilted, meets the axis of the mirror r/tan(tilt) below', () => {
    const [x = 0, y = 0, z = 0] = axisFor({ law: 'cosine power', tilt: '40 deg' });
    const t = 0.8 / Math.sin(40 * DEGREE);
    const met = [(AT[0] ?? 0) + t * x, (AT[1] ?? 0) + t * y, 1 + t * z];
    expect(gap(met, [0, 0, 1 - 0.8 / Math.tan(40 * DEGREE)])).toBeLessThan(ROUNDING);
  });

  test('tilted on the axis itself is finite', () => {
    const { source } = oneFilament([0, 0, 1], { emission: { law: 'cosine power', tilt: '10 deg' } });
    expect(Math.abs(Math.hypot(...vectorAt(source.axis, 0)) - 1)).toBeLessThan(ROUNDING);
  });

  test('of a table is the coil axis, or points toward the mirror', () => {
    const table = { law: 'table', angles: ['0 deg', '180 deg'], intensities: [1, 0] };
    expect(gap(axisFor(table, { axis: 'radial' }), OUT)).toBeLessThan(ROUNDING);
    expect(gap(axisFor({ ...table, about: 'toward mirror' }, { axis: 'radial' }), [0, 0, -1])).toBeLessThan(ROUNDING);
  });
});

describe('a shield', () => {
  const shieldFor = (shield: object) => oneFilament(AT, { shield }).source.shield;

  test('that removes a half-space is a cone of 90°', () => {
    const shield = shieldFor({ removes: 'half-space', direction: 'away from mirror' });
    expect(shield).toEqual({ direction: [0, 0, 1], cosHalfAngle: 0 });
  });

  test('that removes a cone keeps its half angle and its aim', () => {
    const shield = shieldFor({ removes: 'cone', direction: 'outward', halfAngle: '120 deg' });
    expect(gap(shield?.direction ?? [], OUT)).toBeLessThan(ROUNDING);
    expect(Math.abs((shield?.cosHalfAngle ?? NaN) + 0.5)).toBeLessThan(ROUNDING);
  });

  test('turns with the filament around the ring', () => {
    const ring = { arrangement: 'ring', count: 5, diameter: '2 m', height: '1 m' };
    const filaments = sampleFilaments(ring, { shield: { removes: 'half-space', direction: 'inward' } });
    filaments.forEach(({ source }, i) => {
      const angle = (i * 2 * Math.PI) / 5;
      expect(gap(source.shield?.direction ?? [], [-Math.cos(angle), -Math.sin(angle), 0])).toBeLessThan(ROUNDING);
    });
  });

  test('is absent unless given', () => {
    expect(oneFilament(AT, {}).source.shield).toBeNull();
  });
});
