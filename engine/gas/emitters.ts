/** All sub-sources of a shot in one row, each drawn as often as aluminium leaves it. */
import type { EmissionLaw } from '../emission/emissionLaw.ts';
import { isShielded, type FilamentSource } from '../emission/filamentSource.ts';
import { sampleDirectionInto } from '../emission/sampleDirection.ts';
import { DIRECTION, type Atom } from './collisions.ts';
import { uniform, type Random } from './random.ts';

/** Sub-source i owns slots 3i, 3i+1, 3i+2 of the vector arrays. */
export interface Emitters {
  readonly count: number;
  readonly position: Float64Array;
  readonly axes: readonly Float64Array[];
  /** [count] share of the mass that leaves this one or one before it; the last is 1 */
  readonly upTo: Float64Array;
  /** [count] index of its filament */
  readonly filament: Int32Array;
  readonly filaments: readonly FilamentSource[];
  /** [filaments] largest weight that sampleDirectionInto gives */
  readonly mostWeight: Float64Array;
  readonly direction: Float64Array;
  /** kg, of all */
  readonly mass: number;
}

/** Largest value of 4π times the intensity. */
function mostWeight(law: EmissionLaw): number {
  switch (law.kind) {
    case 'wire':
    case 'coil':
      return 4 / Math.PI;
    case 'table':
      return 4 * Math.PI * Math.max(...law.table.intensities);
    default:
      return 1;
  }
}

/**
 * Gathers the sub-sources of filaments.
 *
 * @param masses [filaments] kg evaporated
 * @throws RangeError if nothing evaporates
 */
export function emittersOf(filaments: readonly FilamentSource[], masses: Float64Array): Emitters {
  const mass = masses.reduce((sum, value) => sum + value, 0);
  if (!(mass > 0)) throw new RangeError('no filament evaporates anything: there are no atoms to follow');
  const parts = filaments.flatMap((source, f) =>
    Array.from({ length: source.count }, (_, j) => ({ source, f, j, part: masses[f]! * source.weight[j]! })),
  );
  let sum = 0;
  const upTo = Float64Array.from(parts, ({ part }) => (sum += part));
  return {
    count: parts.length,
    position: Float64Array.from(parts.flatMap(({ source, j }) => [...source.position.subarray(3 * j, 3 * j + 3)])),
    axes: parts.map(({ source, j }) => source.axis.subarray(3 * j, 3 * j + 3)),
    upTo: upTo.map((value) => value / sum),
    filament: Int32Array.from(parts, ({ f }) => f),
    filaments,
    mostWeight: Float64Array.from(filaments, ({ law }) => mostWeight(law)),
    direction: new Float64Array(3),
    mass,
  };
}

/** The sub-source that an atom leaves, drawn in proportion to mass. */
export function drawEmitter({ upTo, count }: Emitters, random: Random): number {
  const u = uniform(random);
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (upTo[middle]! > u) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * Places an atom at a sub-source, on its way in a direction drawn by the emission law. Overwrites place and direction.
 *
 * @returns whether the filament's shield catches it at once
 */
export function emit(emitters: Emitters, i: number, atom: Atom, random: Random): boolean {
  const f = emitters.filament[i]!;
  const { law, shield } = emitters.filaments[f]!;
  const { direction, position, mostWeight: most } = emitters;
  // the weights of evenly drawn directions become the chance to keep one
  while (
    sampleDirectionInto(direction, law, emitters.axes[i]!, uniform(random), uniform(random)) <
    most[f]! * uniform(random)
  );
  atom[0] = position[3 * i]!;
  atom[1] = position[3 * i + 1]!;
  atom[2] = position[3 * i + 2]!;
  atom[DIRECTION] = direction[0]!;
  atom[DIRECTION + 1] = direction[1]!;
  atom[DIRECTION + 2] = direction[2]!;
  return shield !== null && isShielded(shield, direction[0]!, direction[1]!, direction[2]!, 1);
}
