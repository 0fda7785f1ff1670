import { expect, test } from 'vitest';
import { coatOf, plantOf, relativeError, sourceList, type Vector } from '../../support/plants.ts';

/** An arccosine and a few sums: near straight down the angle itself is only good to √ε. */
const ANGLE = 3e-8;
const ROUNDING = 1e-12;

const SOURCES: readonly { readonly position: Vector; readonly charge: number }[] = [
  { position: [0.2, 0, 0.5], charge: 2e-3 },
  { position: [-0.4, 0.3, 0.7], charge: 1e-3 },
];

test('vapour arrives at the deposit-weighted mean of its angles, beyond 60° where its share says', async () => {
  const plant = plantOf({
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '3 m' },
    tank: { diameter: '4 m', depth: '2 m' },
    ...sourceList(SOURCES, { law: 'isotropic' }),
    witnesses: [{ name: 'W', radius: '1.4 m', angle: '0 deg' }],
  });
  const { arrival, face, thickness, witnessThickness } = await coatOf(plant, {
    points: 2000,
    rays: 16,
    withArrival: true,
  });
  const expected = (x: number, y: number) => {
    let [sum, angles, grazing] = [0, 0, 0];
    for (const { position, charge } of SOURCES) {
      const across = Math.hypot(x - position[0], y - position[1]);
      const areal = (charge * position[2]) / (4 * Math.PI * (across ** 2 + position[2] ** 2) ** 1.5);
      const angle = Math.atan2(across, position[2]);
      sum += areal;
      angles += areal * angle;
      if (angle > Math.PI / 3) grazing += areal;
    }
    return { thickness: sum / 2700, meanAngle: angles / sum, grazingShare: grazing / sum };
  };
  let steep = 0;
  for (let i = 0; i < face.points.count; i++) {
    const at = expected(face.points.position[3 * i]!, face.points.position[3 * i + 1]!);
    expect(relativeError(thickness[i]!, at.thickness)).toBeLessThan(ROUNDING);
    expect(Math.abs(arrival!.meanAngle[i]! - at.meanAngle)).toBeLessThan(ANGLE);
    expect(Math.abs(arrival!.grazingShare[i]! - at.grazingShare)).toBeLessThan(ROUNDING);
    if (at.grazingShare > 0) steep++;
  }
  expect(steep).toBeGreaterThan(100);
  expect(relativeError(witnessThickness[0]!, expected(1.4, 0).thickness)).toBeLessThan(ROUNDING);
  expect(Math.abs(arrival!.witnessAngle[0]! - expected(1.4, 0).meanAngle)).toBeLessThan(ANGLE);
});

test('what sticks in part is accounted for in full', async () => {
  const design = {
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '2 m' },
    tank: { diameter: '3 m', depth: '2 m' },
    ...sourceList(SOURCES, { law: 'cosine power' }),
  };
  const all = await coatOf(plantOf(design), { points: 2000 });
  const some = await coatOf(plantOf({ ...design, film: { sticking: '60 %' } }), { points: 2000 });
  all.thickness.forEach((value, i) => expect(relativeError(some.thickness[i]!, 0.6 * value)).toBeLessThan(ROUNDING));
  expect(relativeError(some.statistics.collection.value, 0.6 * all.statistics.collection.value)).toBeLessThan(ROUNDING);
  const lost = some.budget.items.find(({ name }) => name === 'did not stick')!;
  expect(relativeError(lost.mass.value, 0.4 * some.budget.evaporated)).toBeLessThan(ROUNDING);
  expect(Math.abs(some.budget.closure!.value)).toBeLessThanOrEqual(some.budget.closure!.error);
});
