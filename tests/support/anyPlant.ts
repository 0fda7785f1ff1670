/** Plants of every kind for property tests: an arbitrary design, to be filtered by the door that refuses what does not fit. */
import fc from 'fast-check';
import { openPlantFile, type Plant } from '../../engine/index.ts';
import { base64, cubeStl } from './stl.ts';
import { kilograms, metres, place, type DesignPart, type Vector } from './plants.ts';

const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1000 }).map((k) => min + ((max - min) * k) / 1000);
const radians = (angle: number): string => `${angle} rad`;

/** What a plant is made of, in numbers, so that a test can turn it, split it or change a charge and write it down again. */
export interface AnyPlant {
  readonly mirror: DesignPart;
  /** of the middle of the glass */
  readonly centerX: number;
  readonly diameter: number;
  readonly types: Readonly<Record<string, DesignPart>>;
  readonly sets: readonly AnySet[];
  readonly obstacles: readonly AnyObstacle[];
  readonly witnesses: readonly { readonly radius: number; readonly angle: number }[];
}

export type AnySet =
  | {
      readonly kind: 'ring';
      readonly type: string;
      readonly count: number;
      readonly radius: number;
      readonly height: number;
      readonly startAngle: number;
      readonly axis: 'tangential' | 'radial' | 'axial';
      readonly charge: number;
    }
  | {
      readonly kind: 'line';
      readonly type: string;
      readonly count: number;
      readonly from: Vector;
      readonly to: Vector;
      readonly charge: number;
    }
  | {
      readonly kind: 'grid';
      readonly type: string;
      readonly columns: number;
      readonly rows: number;
      readonly spacing: number;
      readonly center: Vector;
      readonly charge: number;
    }
  | {
      readonly kind: 'list';
      readonly type: string;
      readonly filaments: readonly { readonly at: Vector; readonly axis: Vector; readonly charge: number }[];
    };

export interface AnyObstacle {
  readonly shape: 'box' | 'cylinder' | 'tube' | 'cone frustum' | 'disc' | 'annulus' | 'sphere' | 'mesh';
  readonly at: Vector;
  readonly lean: Vector;
  readonly size: number;
}

const emission: fc.Arbitrary<DesignPart> = fc.oneof(
  fc.constant({ law: 'isotropic' }),
  fc.constantFrom(0, 0.5, 1, 1.7, 2, 4).map((power) => ({ law: 'cosine power', power })),
  fc.constantFrom(0.3, -0.5).map((tilt) => ({ law: 'cosine power', power: 1, tilt: radians(tilt) })),
  fc.constant({ law: 'cosine power', power: 2, direction: 'inward' }),
  fc.constant({ law: 'straight wire' }),
  fc.constant({ law: 'open coil' }),
  fc.constant({ law: 'table', angles: ['0 deg', '40 deg', '90 deg', '150 deg'], intensities: [1, 0.9, 0.4, 0.1] }),
  fc.constant({
    law: 'table',
    about: 'toward mirror',
    angles: ['10 deg', '60 deg', '100 deg'],
    intensities: [3, 2, 0],
  }),
);

const shield: fc.Arbitrary<DesignPart | undefined> = fc.oneof(
  { weight: 3, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: fc.constant({ removes: 'half-space', direction: 'away from mirror' }) },
  { weight: 1, arbitrary: fc.constant({ removes: 'cone', direction: 'inward', halfAngle: '50 deg' }) },
  { weight: 1, arbitrary: fc.constant({ removes: 'cone', direction: 'toward mirror', halfAngle: '20 deg' }) },
);

const filamentType: fc.Arbitrary<DesignPart> = fc
  .record({
    emission,
    shield,
    loops: fc.integer({ min: 1, max: 4 }),
    length: fc.constantFrom('0 mm', '40 mm', '90 mm'),
  })
  .map(({ shield: own, ...type }) => (own ? { ...type, shield: own } : type));

/** Places over the mirror, in units of its radius, off its middle. */
const placeOver = fc.tuple(between(-1.2, 1.2), between(-1.2, 1.2), between(0.5, 1.2));

const obstacle: fc.Arbitrary<AnyObstacle> = fc.record({
  shape: fc.constantFrom('box', 'cylinder', 'tube', 'cone frustum', 'disc', 'annulus', 'sphere', 'mesh'),
  at: fc.tuple(between(-0.8, 0.8), between(-0.8, 0.8), between(0.12, 1)),
  lean: fc.tuple(between(-1, 1), between(-1, 1), between(0.2, 1)),
  size: between(0.05, 0.35),
});

const mirror = fc.record({
  radius: fc.constantFrom(0.4, 1, 3),
  /** radii of curvature in units of the radius; 0 is flat */
  curvature: fc.constantFrom(0, 3, 8, -4, -9),
  conic: fc.constantFrom(-1, 0, -2.5, 0.2),
  outline: fc.constantFrom('round', 'hexagon'),
  hole: fc.constantFrom(0, 0.15, 0.4),
  offAxis: fc.constantFrom(0, 0, 0, 0.4, 1.5),
  clear: fc.constantFrom(undefined, 0.85),
});

const sets = (radius: number, base: number, centerX: number): fc.Arbitrary<AnySet> => {
  const scaled = ([x, y, z]: readonly [number, number, number]): Vector => [
    centerX + radius * x,
    radius * y,
    base + radius * z,
  ];
  const charge = between(0, 1).map((share) => Number((1e-3 * share).toPrecision(4)));
  const type = fc.constantFrom('a', 'b');
  return fc.oneof(
    fc.record({
      kind: fc.constant('ring' as const),
      type,
      count: fc.integer({ min: 1, max: 12 }),
      radius: between(0, 1.25).map((x) => x * radius),
      height: between(0.5, 1.2).map((z) => base + z * radius),
      startAngle: between(0, 1),
      axis: fc.constantFrom('tangential', 'radial', 'axial'),
      charge,
    }),
    fc.record({
      kind: fc.constant('line' as const),
      type,
      count: fc.integer({ min: 1, max: 6 }),
      from: placeOver.map(scaled),
      to: placeOver.map(scaled),
      charge,
    }),
    fc.record({
      kind: fc.constant('grid' as const),
      type,
      columns: fc.integer({ min: 1, max: 3 }),
      rows: fc.integer({ min: 1, max: 3 }),
      spacing: between(0.1, 0.5).map((x) => x * radius),
      center: placeOver.map(scaled),
      charge,
    }),
    fc.record({
      kind: fc.constant('list' as const),
      type,
      filaments: fc.array(
        fc.record({
          at: placeOver.map(scaled),
          axis: fc.tuple(between(-1, 1), between(-1, 1), between(0.1, 1)),
          charge,
        }),
        { minLength: 1, maxLength: 5 },
      ),
    }),
  );
};

/** Plants, most of them valid. */
export const anyPlant: fc.Arbitrary<AnyPlant> = mirror.chain(
  ({ radius, curvature, conic, outline, hole, offAxis, clear }) => {
    const centerX = offAxis * radius;
    const far = (offAxis + 1) * radius;
    // the rim of a bowl stands above its vertex by about r²/2R
    const base = curvature > 0 ? (far * far) / (2 * curvature * radius) : 0;
    return fc
      .record({
        types: fc.record({ a: filamentType, b: filamentType }),
        sets: fc.array(sets(radius, base, centerX), { minLength: 1, maxLength: 3 }),
        obstacles: fc.array(obstacle, { maxLength: 3 }),
        witnesses: fc.array(fc.record({ radius: between(0, 1.05).map((x) => x * radius), angle: between(0, 6) }), {
          maxLength: 2,
        }),
      })
      .map((parts): AnyPlant => ({
        ...parts,
        obstacles: parts.obstacles.map(({ at, size, ...rest }) => ({
          ...rest,
          at: [centerX + radius * at[0], radius * at[1], base + radius * at[2]] as const,
          size: size * radius,
        })),
        centerX,
        diameter: 2 * radius,
        mirror: {
          radiusOfCurvature: curvature === 0 ? 'flat' : metres(curvature * radius),
          conicConstant: conic,
          outerDiameter: metres(2 * radius),
          holeDiameter: metres(2 * hole * radius),
          outline,
          offAxisDistance: metres(centerX),
          ...(clear !== undefined && { clearAperture: { outerDiameter: metres(2 * clear * radius) } }),
        },
      }));
  },
);

/** A point or vector turned about the z axis. */
const turned = ([x, y, z]: Vector, turn: number): Vector => [
  x * Math.cos(turn) - y * Math.sin(turn),
  x * Math.sin(turn) + y * Math.cos(turn),
  z,
];

/** Positions of a line's or a grid's filaments and their coil axis, as design.md defines them. */
function spread(
  set: Extract<AnySet, { kind: 'line' | 'grid' }>,
): { readonly at: Vector; readonly axis: Vector; readonly charge: number }[] {
  const { charge } = set;
  if (set.kind === 'line') {
    const along: Vector = [set.to[0] - set.from[0], set.to[1] - set.from[1], set.to[2] - set.from[2]];
    const axis: Vector = Math.hypot(...along) > 0 ? along : [1, 0, 0];
    return Array.from({ length: set.count }, (_, i) => {
      const share = set.count === 1 ? 0.5 : i / (set.count - 1);
      return {
        at: [set.from[0] + share * along[0], set.from[1] + share * along[1], set.from[2] + share * along[2]],
        axis,
        charge,
      };
    });
  }
  return Array.from({ length: set.columns * set.rows }, (_, i) => ({
    at: [
      set.center[0] + ((i % set.columns) - (set.columns - 1) / 2) * set.spacing,
      set.center[1] + (Math.floor(i / set.columns) - (set.rows - 1) / 2) * set.spacing,
      set.center[2],
    ],
    axis: [1, 0, 0],
    charge,
  }));
}

function listDesign(
  name: string,
  type: string,
  filaments: readonly { readonly at: Vector; readonly axis: Vector; readonly charge: number }[],
): DesignPart {
  return {
    arrangement: 'list',
    name,
    type,
    filaments: filaments.map(({ at, axis, charge }) => ({
      position: place(at),
      axis: [...axis],
      charge: kilograms(charge),
    })),
  };
}

function setDesign(set: AnySet, name: string, turn: number): DesignPart {
  switch (set.kind) {
    case 'ring':
      return {
        arrangement: 'ring',
        name,
        type: set.type,
        count: set.count,
        diameter: metres(2 * set.radius),
        height: metres(set.height),
        startAngle: radians(set.startAngle + turn),
        axis: set.axis,
        charge: kilograms(set.charge),
      };
    case 'list':
      return listDesign(
        name,
        set.type,
        set.filaments.map(({ at, axis, charge }) => ({ at: turned(at, turn), axis: turned(axis, turn), charge })),
      );
    default:
      if (turn !== 0)
        return listDesign(
          name,
          set.type,
          spread(set).map(({ at, axis, charge }) => ({ at: turned(at, turn), axis: turned(axis, turn), charge })),
        );
      return set.kind === 'line'
        ? {
            arrangement: 'line',
            name,
            type: set.type,
            count: set.count,
            from: place(set.from),
            to: place(set.to),
            charge: kilograms(set.charge),
          }
        : {
            arrangement: 'grid',
            name,
            type: set.type,
            columns: set.columns,
            rows: set.rows,
            spacing: [metres(set.spacing), metres(set.spacing)],
            center: place(set.center),
            charge: kilograms(set.charge),
          };
  }
}

function obstacleDesign({ shape, at, lean, size }: AnyObstacle, name: string, turn: number): DesignPart {
  const center = turned(at, turn);
  const axis = turned(lean, turn);
  const end: Vector = [center[0] + size * axis[0], center[1] + size * axis[1], center[2] + size * axis[2]];
  // turned about x, then y, then z: one more turn about z adds to the third angle
  const rotation = [lean[0], lean[1], lean[2] + turn].map(radians);
  switch (shape) {
    case 'box':
      return { shape, name, center: place(center), size: [size, 0.6 * size, 0.3 * size].map(metres), rotation };
    case 'mesh':
      return {
        shape,
        name,
        data: base64(cubeStl([size, 0.6 * size, 0.3 * size])),
        unit: 'm',
        position: place(center),
        rotation,
      };
    case 'cylinder':
    case 'tube':
      return { shape, name, from: place(center), to: place(end), diameter: metres(0.5 * size) };
    case 'cone frustum':
      return {
        shape,
        name,
        from: place(center),
        to: place(end),
        fromDiameter: metres(size),
        toDiameter: metres(0.3 * size),
      };
    case 'disc':
      return { shape, name, center: place(center), normal: [...axis], diameter: metres(size) };
    case 'annulus':
      return {
        shape,
        name,
        center: place(center),
        normal: [...axis],
        outerDiameter: metres(size),
        innerDiameter: metres(0.4 * size),
      };
    case 'sphere':
      return { shape, name, center: place(center), diameter: metres(size) };
  }
}

/**
 * The design of a plant, turned about the z axis.
 *
 * @param turn [rad] not 0 only where the mirror is on its axis
 */
export function designOf(
  { mirror: own, diameter, types, sets: all, obstacles, witnesses }: AnyPlant,
  turn = 0,
): DesignPart {
  return {
    format: 'evenfall',
    version: 1,
    name: 'Tarn Hill, any plant',
    mirror: { ...own, ...(turn !== 0 && own['outline'] === 'hexagon' && { cornerAngle: radians(turn) }) },
    tank: { diameter: metres(1.6 * diameter), depth: metres(1.6 * diameter) },
    filamentTypes: types,
    filaments: all.map((set, i) => setDesign(set, `set ${i + 1}`, turn)),
    obstacles: obstacles.map((one, i) => obstacleDesign(one, `thing ${i + 1}`, turn)),
    witnesses: witnesses.map(({ radius, angle }, i) => ({
      name: `W${i + 1}`,
      radius: metres(radius),
      angle: radians(angle + turn),
    })),
  };
}

/** The plant of a design, or undefined if the door refuses it. */
export function validPlant(design: DesignPart): Plant | undefined {
  const opened = openPlantFile(design);
  return opened.ok ? opened.plant : undefined;
}
