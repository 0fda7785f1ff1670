/** One filament over one diameter of the mirror: distance, emission and arrival, place by place. */
import { emittedIntensity } from '../../../../engine/emission/emissionLaw.ts';
import type { FilamentSource } from '../../../../engine/emission/filamentSource.ts';
import type { Plant } from '../../../../engine/index.ts';
import { firstFiring } from '../bench.ts';
import { diameterLine, summed, thicknessByFilament } from './lineDeposit.ts';

const PLACES = 121;

export interface ThinEdge {
  readonly filamentName: string;
  readonly law: FilamentSource['law']['kind'];
  /** [places] m, signed, the filament's side positive */
  readonly along: Float64Array;
  /** [places] height of the face, m */
  readonly height: Float64Array;
  /** of the filament, in the plane of the section: along the diameter, and up; m */
  readonly filament: readonly [along: number, z: number];
  /** [places] m, from the filament's middle */
  readonly distance: Float64Array;
  /** [places] intensity over its largest on this line, 1 */
  readonly emission: Float64Array;
  /** [places] cosine of the angle of arrival, 1 */
  readonly arrival: Float64Array;
  /** [places] m, of this filament alone, shadows included */
  readonly thickness: Float64Array;
  /** [places] m, of all filaments */
  readonly all: Float64Array;
  /** index of the place that this filament coats most, and of the one at the end of the line farther from it */
  readonly near: number;
  readonly far: number;
}

const ratioOf = (values: Float64Array, a: number, b: number): number => values[a]! / values[b]!;

export async function thinEdgeFacts(plant: Plant): Promise<ThinEdge> {
  const index = firstFiring(plant);
  const { center, name, source } = plant.filaments[index]!;
  const [fx, fy, fz] = center;
  const offset = [fx - plant.shape.centerX, fy] as const;
  const angle = Math.atan2(offset[1], offset[0]);
  const { along, points } = diameterLine(plant, angle, PLACES);
  const each = await thicknessByFilament(plant, points);
  const thickness = each[index]!;
  const distance = new Float64Array(along.length);
  const emission = new Float64Array(along.length);
  const arrival = new Float64Array(along.length);
  for (let i = 0; i < along.length; i++) {
    const [dx, dy, dz] = [0, 1, 2].map((k) => points.position[3 * i + k]! - center[k]!) as [number, number, number];
    const r = Math.hypot(dx, dy, dz);
    distance[i] = r;
    const n = points.normal.subarray(3 * i, 3 * i + 3);
    arrival[i] = Math.max(0, -(dx * n[0]! + dy * n[1]! + dz * n[2]!) / r);
    emission[i] = meanIntensity(source, dx / r, dy / r, dz / r);
  }
  const most = Math.max(...emission);
  const near = thickness.indexOf(Math.max(...thickness));
  const last = along.length - 1;
  return {
    filamentName: name,
    law: source.law.kind,
    along,
    height: Float64Array.from(along, (_, i) => points.position[3 * i + 2]!),
    filament: [Math.hypot(offset[0], offset[1]), fz],
    distance,
    emission: emission.map((value) => value / most),
    arrival,
    thickness,
    all: summed(each),
    near,
    far: distance[0]! > distance[last]! ? 0 : last,
  };
}

/** Intensity of a filament in a direction, its loops or pieces taken together. */
function meanIntensity({ count, axis, weight, law }: FilamentSource, x: number, y: number, z: number): number {
  let sum = 0;
  for (let j = 0; j < count; j++) {
    const cosEmit = axis[3 * j]! * x + axis[3 * j + 1]! * y + axis[3 * j + 2]! * z;
    sum += weight[j]! * emittedIntensity(law, cosEmit);
  }
  return sum;
}

/** By what a place is thinner than the one that the filament coats most, and what each cause alone would do. */
export interface Fall {
  readonly total: number;
  readonly distance: number;
  readonly arrival: number;
  readonly emission: number;
}

export function fallTo({ near, thickness, distance, arrival, emission }: ThinEdge, place: number): Fall {
  return {
    total: ratioOf(thickness, near, place),
    distance: ratioOf(distance, place, near) ** 2,
    arrival: ratioOf(arrival, near, place),
    emission: ratioOf(emission, near, place),
  };
}
