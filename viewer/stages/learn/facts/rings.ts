/** One filament, a ring, two rings: the same kind of filament in the same tank. */
import type { Coat, DesignFile } from '../../../../engine/index.ts';
import { sag } from '../../../../engine/geometry/mirrorShape.ts';
import { changedPlant, firstFiring, inMetres } from '../bench.ts';
import type { Bench, Tools } from '../lesson.ts';

export const LAYOUTS = ['one', 'ring', 'rings'] as const;
export type Layout = (typeof LAYOUTS)[number];
export const LAYOUT_NAMES: Readonly<Record<Layout, string>> = {
  one: 'one filament over the middle',
  ring: 'one ring',
  rings: 'two rings',
};

/** Filaments of the outer ring, where there is room for them: coils keep a fifth of their length apart. */
const OUTER_MOST = 24;
const OUTER_LEAST = 4;
const COIL_ROOM = 1.2;
/** Diameter of the inner ring over that of the outer one. */
export const INNER_SHARE = 0.5;
/** Charge of each; the shape of the coat does not depend on it. */
const CHARGE = '1 g';
/** Points of a coat that is to follow a slider. */
const POINTS = 3000;
/** Room that a ring keeps to the wall, as a share of the tank's radius, and to the glass, as a share of the mirror's. */
const WALL_ROOM = 0.06;
const GLASS_ROOM = 0.15;

/** Diameters that a ring can have in a tank, m, and the one that it has at first. */
export interface RingRoom {
  readonly least: number;
  readonly most: number;
  readonly first: number;
  /** filaments of the outer ring, and of the inner one, whose circle is half as long */
  readonly outerCount: number;
  readonly innerCount: number;
}

/** The usual ring stands a little outside the mirror; a tank too narrow for that sets the limit. */
export function ringRoom({ plant: { tank, shape, filaments } }: Bench): RingRoom {
  const coil = Math.max(...filaments.map(({ length }) => length));
  const most = 2 * tank.radius * (1 - WALL_ROOM) - coil;
  const first = Math.min(most, 2.3 * shape.rimRadius);
  const fitting = Math.min(OUTER_MOST, Math.floor((Math.PI * first) / (COIL_ROOM * coil)));
  const outerCount = Math.max(OUTER_LEAST, fitting - (fitting % 2));
  const least = Math.min(first, Math.max(0.4 * shape.rimRadius, (outerCount * coil) / Math.PI));
  return { least, most, first, outerCount, innerCount: outerCount / 2 };
}

/** Height of the lesson's filaments: that of the bench, but clear of the glass. */
function heightFor({ plant }: Bench, radius: number): number {
  const { shape, tank, filaments } = plant;
  const own = filaments[firstFiring(plant)]!.center[2];
  const clear = sag(shape, Math.min(radius, shape.rimRadius) + shape.centerX) + GLASS_ROOM * shape.rimRadius;
  return Math.min(Math.max(own, clear), tank.highZ - 0.02 * (tank.highZ - tank.lowZ));
}

/** The sets of filaments of a layout, as design files write them. */
function setsOf(bench: Bench, layout: Layout, diameter: number): readonly object[] {
  const { file, plant } = bench;
  const [first] = file.filaments;
  if (!first) throw new RangeError('this design has no filaments; choose the teaching tank');
  const { outerCount, innerCount } = ringRoom(bench);
  const z = inMetres(heightFor(bench, diameter / 2));
  const common = { type: first.type, charge: CHARGE };
  const ring = (name: string, count: number, across: number) => ({
    arrangement: 'ring',
    name,
    count,
    diameter: inMetres(across),
    height: z,
    ...common,
  });
  const middle = [inMetres(plant.shape.centerX), '0 m', z];
  if (layout === 'one')
    return [{ arrangement: 'line', name: 'one', count: 1, from: middle, to: middle, axis: [1, 0, 0], ...common }];
  if (layout === 'ring') return [ring('ring', outerCount, diameter)];
  return [ring('outer', outerCount, diameter), ring('inner', innerCount, INNER_SHARE * diameter)];
}

/** The coat of one of the layouts, its outer ring as wide as told. */
export async function ringCoat(
  bench: Bench,
  { evaluate }: Pick<Tools, 'evaluate'>,
  layout: Layout,
  diameter: number,
): Promise<Coat> {
  const filaments = setsOf(bench, layout, diameter);
  const plant = changedPlant(bench, (file: DesignFile) => ({ ...file, filaments, obstacles: [], witnesses: [] }));
  return evaluate(plant, { points: POINTS, rays: 0 });
}

export interface Rings {
  readonly room: RingRoom;
  /** at the first diameter */
  readonly coats: Readonly<Record<Layout, Coat>>;
}

export async function ringsFacts(bench: Bench, tools: Tools): Promise<Rings> {
  const room = ringRoom(bench);
  const coats: Partial<Record<Layout, Coat>> = {};
  for (const [i, layout] of LAYOUTS.entries()) {
    coats[layout] = await ringCoat(bench, tools, layout, room.first);
    await tools.step((i + 1) / LAYOUTS.length);
  }
  return { room, coats: coats as Record<Layout, Coat> };
}

/** Index of the layout for which a number of its coat is least. */
export function leastOf({ coats }: Rings, read: (coat: Coat) => number): number {
  const values = LAYOUTS.map((layout) => read(coats[layout]));
  return values.indexOf(Math.min(...values));
}
