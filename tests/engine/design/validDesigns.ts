/** Random valid designs: what fits by construction must open. */
import fc from 'fast-check';

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const lengthOf = (metres: number, unit: string): string => {
  const factor = { m: 1, cm: 100, mm: 1000, in: 1 / 0.0254 }[unit] ?? 1;
  return `${Number((metres * factor).toPrecision(8))} ${unit}`;
};
const unit = fc.constantFrom('m', 'cm', 'mm', 'in');
const length = (min: number, max: number): fc.Arbitrary<string> =>
  fc.tuple(number(min, max), unit).map(([value, symbol]) => lengthOf(value, symbol));
const angle = number(-360, 360).map((degrees) => `${degrees.toFixed(3)} deg`);

const emission = fc.oneof(
  fc.constant({ law: 'isotropic' }),
  fc.constant({ law: 'straight wire' }),
  fc.constant({ law: 'open coil' }),
  number(0, 50).map((power) => ({ law: 'cosine power', power })),
  angle.map((tilt) => ({ law: 'cosine power', tilt })),
  fc.constantFrom('inward', 'outward', [0, 1, -1]).map((direction) => ({ law: 'cosine power', direction })),
  number(0, 3).map((last) => ({ law: 'table', angles: ['0 deg', '1 rad', '180 deg'], intensities: [2, 1, last] })),
);

const shield = fc.oneof(
  fc.constantFrom('inward', 'away from mirror').map((direction) => ({ removes: 'half-space', direction })),
  number(1, 179).map((half) => ({ removes: 'cone', direction: [1, 2, 3], halfAngle: `${half} deg` })),
);

const charge = number(0, 2000).map((mass) => `${mass.toFixed(2)} mg`);

const type = fc.integer({ min: 1, max: 8 }).chain((loops) =>
  fc.record(
    {
      loops: fc.constant(loops),
      length: length(0, 0.2),
      clipMass: charge,
      clipsPerLoop: fc.oneof(
        fc.integer({ min: 0, max: 9 }),
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: loops, maxLength: loops }),
      ),
      emission,
      shield,
    },
    { requiredKeys: ['loops', 'clipMass', 'emission'] },
  ),
);

const axis = fc.constantFrom('tangential', 'radial', 'axial', [1, 0, 0], [0.2, -3, 1]);
/** room that no filament of at most 0.2 m leaves: radius 1.3 m, from 0.8 m to 1.4 m above the vertex */
const position = fc.tuple(length(-0.7, 0.7), length(-0.7, 0.7), length(0.95, 1.3));

const arrangement = fc.oneof(
  fc.record({
    arrangement: fc.constant('ring'),
    count: fc.integer({ min: 4, max: 40 }),
    diameter: length(0, 2.3),
    height: length(0.95, 1.3),
    axis,
    feeds: fc.integer({ min: 1, max: 4 }),
    startAngle: angle,
  }),
  fc.record({
    arrangement: fc.constant('line'),
    count: fc.integer({ min: 1, max: 9 }),
    from: position,
    to: position,
    charge,
  }),
  fc.record({
    arrangement: fc.constant('grid'),
    columns: fc.integer({ min: 1, max: 4 }),
    rows: fc.integer({ min: 1, max: 4 }),
    spacing: fc.tuple(length(0.01, 0.3), length(0.01, 0.3)),
    center: fc.constant(['0 m', '0 m', '1.1 m']),
    axis,
    exceptions: fc.constant([{ filament: 1, outOfUse: true }]),
  }),
  fc.record({
    arrangement: fc.constant('list'),
    filaments: fc.array(fc.record({ position, axis, charge }, { requiredKeys: ['position'] }), {
      minLength: 1,
      maxLength: 6,
    }),
  }),
);

/** Designs of a 2 m mirror in a 3 m tank whose filaments, witnesses and pressures are drawn at random. */
export const validDesign: fc.Arbitrary<Record<string, unknown>> = fc
  .record({
    mirror: fc.record(
      {
        radiusOfCurvature: fc.oneof(length(4, 40), length(-40, -4), fc.constant('flat')),
        conicConstant: number(-2, 0.5),
        outerDiameter: fc.constantFrom('2 m', '200 cm', '1.9 m'),
        holeDiameter: length(0, 0.6),
        outline: fc.constantFrom('round', 'hexagon'),
        facing: fc.oneof(fc.constantFrom('up', 'down'), fc.record({ sideways: angle })),
      },
      { requiredKeys: ['radiusOfCurvature', 'outerDiameter'] },
    ),
    tank: fc.constant({ diameter: '3 m', depth: '2.5 m' }),
    filamentTypes: type.map((only) => ({ only })),
    filaments: fc.array(arrangement, { minLength: 1, maxLength: 4 }),
    witnesses: fc.array(fc.record({ radius: length(0, 1.2), angle }), { maxLength: 4 }),
    vacuum: fc.record({ pressure: fc.constantFrom('1e-5 mbar', '3e-6 Torr'), gas: fc.constantFrom('air', 'Ar') }),
    film: fc.record({ target: number(1, 500).map((nm) => `${nm} nm`), tolerance: fc.constantFrom('5 %', '10 %') }),
  })
  .map(({ filaments, witnesses, ...rest }) => ({
    format: 'evenfall',
    version: 1,
    name: 'drawn at random',
    ...rest,
    filaments: filaments.map((set, i) => ({ ...set, name: `set ${i}`, type: 'only' })),
    witnesses: witnesses.map((witness, i) => ({ ...witness, name: `W${i}` })),
  }));
