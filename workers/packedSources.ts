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
  const counts = Int32Array.from(sources, ({ source }) => source.count);
  const numbers = new Float64Array(PER_SUB * counts.reduce((sum, count) => sum + count, 0));
  const laws: EmissionLaw[] = [];
  const placeOf = new Map<EmissionLaw, number>();
  let o = 0;
  const lawOf = Int32Array.from(sources, ({ source: { position, axis, weight, law } }) => {
    for (const part of [position, axis, weight]) {
      numbers.set(part, o);
      o += part.length;
    }
    const place = placeOf.get(law) ?? laws.push(law) - 1;
    placeOf.set(law, place);
    return place;
  });
  return {
    keys: sources.map(({ key }) => key),
    counts,
    numbers,
    laws,
    lawOf,
    shields: sources.map(({ source }) => source.shield),
  };
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
  let o = 0;
  const next = (length: number): Float64Array => numbers.subarray(o, (o += length));
  return keys.map((key, f) => {
    const count = counts[f]!;
    const [position, axis, weight] = [next(3 * count), next(3 * count), next(count)];
    return { key, source: { count, position, axis, weight, law: laws[lawOf[f]!]!, shield: shields[f]! } };
  });
}
