/** Filaments on their way to a worker: one array for all of them, since each array of a message costs its own copy. */
import type { EmissionLaw } from '../engine/emission/emissionLaw.ts';
import type { Shield } from '../engine/emission/filamentSource.ts';
import type { KeyedSource } from '../engine/transport/transport.ts';

export interface PackedSources {
  readonly keys: readonly string[];
  /** [filaments] sub-sources of each */
  readonly counts: Int32Array;
  /** for each filament its positions [3·count], axes [3·count] and weights [count] */
  readonly numbers: Float64Array;
  /** the laws that occur, each once */
  readonly laws: readonly EmissionLaw[];
  /** [filaments] places in `laws` */
  readonly lawOf: Int32Array;
  readonly shields: readonly (Shield | null)[];
}

/** Numbers of a sub-source: position, axis, weight. */
const PER_SUB = 7;

export function packSources(sources: readonly KeyedSource[]): PackedSources {
  const keys: string[] = [];
  const shields: (Shield | null)[] = [];
  const laws: EmissionLaw[] = [];
  const placeOf = new Map<EmissionLaw, number>();
  const [counts, lawOf] = [new Int32Array(sources.length), new Int32Array(sources.length)];
  let length = 0;
  // loops, not callbacks: made anew for each edit, those would be compiled again after each collection of garbage
  for (const { source } of sources) length += PER_SUB * source.count;
  const numbers = new Float64Array(length);
  let o = 0;
  for (let f = 0; f < sources.length; f++) {
    const { key, source } = sources[f]!;
    const { count, position, axis, weight, law, shield } = source;
    keys.push(key);
    shields.push(shield);
    counts[f] = count;
    numbers.set(position, o);
    numbers.set(axis, o + 3 * count);
    numbers.set(weight, o + 6 * count);
    o += PER_SUB * count;
    const place = placeOf.get(law) ?? laws.push(law) - 1;
    placeOf.set(law, place);
    lawOf[f] = place;
  }
  return { keys, counts, numbers, laws, lawOf, shields };
}

/** Packs like packSources; the same filaments again, as they go to one worker after the other, are packed once. */
export function createPacker(): typeof packSources {
  let last: { readonly sources: readonly KeyedSource[]; readonly packed: PackedSources } | undefined;
  return (sources) => {
    const isSame = last?.sources.length === sources.length && sources.every((each, k) => each === last?.sources[k]);
    if (!last || !isSame) last = { sources, packed: packSources(sources) };
    return last.packed;
  };
}

/** The filaments again; their arrays are views of the packed one. */
export function unpackSources({ keys, counts, numbers, laws, lawOf, shields }: PackedSources): KeyedSource[] {
  const sources: KeyedSource[] = [];
  let o = 0;
  for (let f = 0; f < keys.length; f++) {
    const count = counts[f]!;
    const [position, axis] = [numbers.subarray(o, o + 3 * count), numbers.subarray(o + 3 * count, o + 6 * count)];
    const weight = numbers.subarray(o + 6 * count, o + PER_SUB * count);
    o += PER_SUB * count;
    sources.push({
      key: keys[f]!,
      source: { count, position, axis, weight, law: laws[lawOf[f]!]!, shield: shields[f]! },
    });
  }
  return sources;
}
