/** From an arrangement to single filaments, and from each filament to its sub-sources. */
import { mat4, vec3 } from 'gl-matrix';
import type { EmissionDesign, FilamentSetDesign, FilamentTypeDesign } from '../design/designSchema.ts';
import type { EmissionLaw } from '../emission/emissionLaw.ts';
import { emissionTable } from '../emission/emissionTable.ts';
import type { FilamentSource, Shield } from '../emission/filamentSource.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import type { Vector } from '../geometry/solids.ts';
import type { Filament } from './plant.ts';

/** Gauss–Legendre nodes on [−1, 1] and weights, 8 points: the pieces of each straight run of a wire.
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 25.4 */
const WIRE_NODES = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const WIRE_WEIGHTS = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

interface Place {
  readonly position: Vector;
  readonly coilAxis: Vector;
  readonly name?: string | undefined;
  readonly charge?: number | undefined;
  readonly feed?: string | undefined;
}

/** Unit vector away from the tank's axis at a point; +x on the axis itself. */
function outwardAt(shape: MirrorShape, [x, y]: Vector): Vector {
  const r = Math.hypot(x - shape.centerX, y);
  return r > 1e-12 ? [(x - shape.centerX) / r, y / r, 0] : [1, 0, 0];
}

type CoilAxis = Vector | 'tangential' | 'radial' | 'axial';

function coilAxisAt(shape: MirrorShape, axis: CoilAxis, position: Vector): Vector {
  if (typeof axis !== 'string') return axis;
  const out = outwardAt(shape, position);
  return axis === 'axial' ? [0, 0, 1] : axis === 'radial' ? out : [-out[1], out[0], 0];
}

/** Number of filaments in a set, without placing them. */
export function filamentCount(set: FilamentSetDesign): number {
  switch (set.arrangement) {
    case 'ring':
    case 'line':
      return set.count;
    case 'grid':
      return set.columns * set.rows;
    case 'list':
      return set.filaments?.length ?? 0;
  }
}

function placesOf(set: FilamentSetDesign, shape: MirrorShape): Place[] {
  const at = (position: Vector, axis: CoilAxis): Place => ({ position, coilAxis: coilAxisAt(shape, axis, position) });
  switch (set.arrangement) {
    case 'ring':
      return Array.from({ length: set.count }, (_, i) => {
        const angle = set.startAngle + (2 * Math.PI * i) / set.count;
        const r = set.diameter / 2;
        return at([shape.centerX + r * Math.cos(angle), r * Math.sin(angle), set.height], set.axis);
      });
    case 'line': {
      const along = vec3.sub([0, 0, 0], [...set.to], [...set.from]) as [number, number, number];
      const length = Math.hypot(...along);
      const axis =
        set.axis ??
        (length > 0 ? ([along[0] / length, along[1] / length, along[2] / length] as const) : ([1, 0, 0] as const));
      return Array.from({ length: set.count }, (_, i) => {
        const share = set.count === 1 ? 0.5 : i / (set.count - 1);
        return at(
          [set.from[0] + share * along[0], set.from[1] + share * along[1], set.from[2] + share * along[2]],
          axis,
        );
      });
    }
    case 'grid':
      return Array.from({ length: set.columns * set.rows }, (_, i) => {
        const column = (i % set.columns) - (set.columns - 1) / 2;
        const row = Math.floor(i / set.columns) - (set.rows - 1) / 2;
        return at(
          [set.center[0] + column * set.spacing[0], set.center[1] + row * set.spacing[1], set.center[2]],
          set.axis ?? [1, 0, 0],
        );
      });
    case 'list':
      return (set.filaments ?? []).map(({ position, axis, ...own }) => ({
        ...own,
        ...at(position, axis ?? set.axis ?? 'tangential'),
      }));
  }
}

type Aim = Vector | 'toward mirror' | 'away from mirror' | 'inward' | 'outward';

function aimAt(shape: MirrorShape, aim: Aim, position: Vector): Vector {
  if (typeof aim !== 'string') return aim;
  const out = outwardAt(shape, position);
  if (aim === 'outward') return out;
  if (aim === 'inward') return [-out[0], -out[1], 0];
  return [0, 0, aim === 'toward mirror' ? -1 : 1];
}

function lawOf(emission: EmissionDesign): EmissionLaw {
  switch (emission.law) {
    case 'isotropic':
      return { kind: 'isotropic' };
    case 'cosine power':
      return { kind: 'cosine', power: emission.power };
    case 'straight wire':
      return { kind: 'wire' };
    case 'open coil':
      return { kind: 'coil' };
    case 'table':
      return { kind: 'table', table: emissionTable(emission.angles, emission.intensities) };
  }
}

function emissionAxis(emission: EmissionDesign, shape: MirrorShape, place: Place): Vector {
  if (emission.law === 'table' && emission.about === 'toward mirror') return [0, 0, -1];
  if (emission.law !== 'cosine power') return place.coilAxis;
  if (emission.tilt === undefined) return aimAt(shape, emission.direction ?? 'toward mirror', place.position);
  const out = outwardAt(shape, place.position);
  const [sin, cos] = [Math.sin(emission.tilt), Math.cos(emission.tilt)];
  return [-sin * out[0], -sin * out[1], -cos];
}

function shieldOf(type: FilamentTypeDesign, shape: MirrorShape, position: Vector): Shield | null {
  if (!type.shield) return null;
  return {
    direction: aimAt(shape, type.shield.direction, position),
    cosHalfAngle: type.shield.removes === 'cone' ? Math.cos(type.shield.halfAngle ?? 0) : 0,
  };
}

/** Shares of the charge on each loop, from clips counted loop by loop or even. */
function loopShares(type: FilamentTypeDesign): number[] {
  const clips = Array.isArray(type.clipsPerLoop) ? type.clipsPerLoop : Array.from({ length: type.loops }, () => 1);
  const total = clips.reduce((sum, n) => sum + n, 0);
  return clips.map((n) => (total > 0 ? n / total : 1 / clips.length));
}

/** Sub-sources of one filament: loops along its coil axis, or Gauss–Legendre pieces of its bent wire. */
function sourceOf(type: FilamentTypeDesign, law: EmissionLaw, shape: MirrorShape, place: Place): FilamentSource {
  const shield = shieldOf(type, shape, place.position);
  if (type.path) return wireSource(type.path, place, law, shield);
  const weight = Float64Array.from(loopShares(type));
  const count = weight.length;
  const position = new Float64Array(3 * count);
  const axis = new Float64Array(3 * count);
  const aimed = emissionAxis(type.emission, shape, place);
  for (let j = 0; j < count; j++) {
    const along = ((j - (count - 1) / 2) * type.length) / count;
    for (let k = 0; k < 3; k++) position[3 * j + k] = place.position[k as 0] + along * place.coilAxis[k as 0];
    axis.set(aimed, 3 * j);
  }
  return { count, position, axis, weight, law, shield };
}

/** The filament's own frame: x along its axis, z as far away from the mirror as that allows. */
function worldFromFilament({ position, coilAxis }: Place): mat4 {
  const x = [...coilAxis] as [number, number, number];
  const up: [number, number, number] = Math.abs(x[2]) < 0.999 ? [0, 0, 1] : [1, 0, 0];
  const y = vec3.normalize([0, 0, 0], vec3.cross([0, 0, 0], up, x)) as [number, number, number];
  const z = vec3.cross([0, 0, 0], x, y) as [number, number, number];
  return [...x, 0, ...y, 0, ...z, 0, ...position, 1] as unknown as mat4;
}

/** Sub-sources that a filament of this type is made of, without placing it. */
export function subSourceCount(type: FilamentTypeDesign): number {
  return type.path ? (type.path.length - 1) * 2 * WIRE_NODES.length : type.loops;
}

function wireSource(path: readonly Vector[], place: Place, law: EmissionLaw, shield: Shield | null): FilamentSource {
  const world = worldFromFilament(place);
  const corners = path.map((corner) => vec3.transformMat4([0, 0, 0], [...corner], world) as [number, number, number]);
  const lengths = corners.slice(1).map((corner, i) => vec3.distance(corner, corners[i] ?? corner));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const nodes = [...WIRE_NODES.map((node) => -node), ...WIRE_NODES];
  const nodeWeights = [...WIRE_WEIGHTS, ...WIRE_WEIGHTS];
  const position: number[] = [];
  const axis: number[] = [];
  const weight: number[] = [];
  lengths.forEach((length, i) => {
    const [from, to] = [corners[i] ?? [0, 0, 0], corners[i + 1] ?? [0, 0, 0]] as [number[], number[]];
    nodes.forEach((node, n) => {
      for (let k = 0; k < 3; k++) {
        position.push(((from[k] ?? 0) * (1 - node) + (to[k] ?? 0) * (1 + node)) / 2);
        axis.push(((to[k] ?? 0) - (from[k] ?? 0)) / length);
      }
      weight.push(((nodeWeights[n] ?? 0) / 2) * (length / total));
    });
  });
  return {
    count: weight.length,
    position: Float64Array.from(position),
    axis: Float64Array.from(axis),
    weight: Float64Array.from(weight),
    law,
    shield,
  };
}

/** Aluminium hung on a filament of this type, kg; undefined if the type does not say. */
export function typeCharge(type: FilamentTypeDesign): number | undefined {
  if (type.charge !== undefined) return type.charge;
  if (type.clipMass === undefined) return undefined;
  const clips = Array.isArray(type.clipsPerLoop)
    ? type.clipsPerLoop.reduce((sum, n) => sum + n, 0)
    : type.clipsPerLoop * type.loops;
  return clips * type.clipMass;
}

/** The filaments of a set, in the order of their numbers. */
export function placeFilaments(
  set: FilamentSetDesign,
  iSet: number,
  type: FilamentTypeDesign,
  shape: MirrorShape,
): Filament[] {
  const exceptions = new Map((set.exceptions ?? []).map((exception) => [exception.filament, exception]));
  const places = placesOf(set, shape);
  const setCharge = set.charge ?? typeCharge(type) ?? 0;
  const law = lawOf(type.emission);
  return places.map((place, i) => {
    const exception = exceptions.get(i + 1);
    const feedNumber = set.feeds === undefined ? undefined : Math.floor((i * set.feeds) / places.length) + 1;
    return {
      name: place.name ?? `${set.name} ${i + 1}`,
      set: iSet,
      number: i + 1,
      feed: place.feed ?? (feedNumber === undefined ? null : `${set.name} feed ${feedNumber}`),
      charge: exception?.charge ?? place.charge ?? setCharge,
      outOfUse: exception?.outOfUse ?? false,
      center: place.position,
      coilAxis: place.coilAxis,
      length: type.length,
      loops: type.path ? 1 : type.loops,
      source: sourceOf(type, law, shape, place),
    };
  });
}
