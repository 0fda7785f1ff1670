/** One evaluation's calls to the transport, joined over blocks of points. */
import type {
  Control,
  DepositResult,
  KeyedPoints,
  KeyedSource,
  Precision,
  SceneData,
  Transport,
} from '../transport/transport.ts';

export interface Job {
  readonly transport: Transport;
  readonly scene: SceneData;
  readonly sources: readonly KeyedSource[];
  readonly control: Control | undefined;
  /** double unless told otherwise */
  readonly precision?: Precision;
}

/** What is wanted of a deposit beside the sums. */
export interface Wanted {
  readonly withSignature: boolean;
  readonly withArrival: boolean;
}

/** Deposits at several blocks of points, one result for each. */
export async function depositAtEach(
  { transport, control, ...of }: Job,
  blocks: readonly KeyedPoints[],
  mixes: readonly Float64Array[],
  wanted: Wanted,
): Promise<readonly DepositResult[]> {
  return transport.deposit({ ...of, blocks, mixes, ...wanted }, control);
}

/** The results at several blocks of points as one, in order. */
export function joinDeposits(results: readonly DepositResult[]): DepositResult {
  const [first] = results;
  if (!first) throw new RangeError('there is nothing to join');
  if (results.length === 1) return first;
  const arrivals = results.flatMap(({ arrival }) => (arrival ? [arrival] : []));
  return {
    sums: first.sums.map((_, m) => joinFloats(results.map(({ sums }) => sums[m]!))),
    signature: results.some(({ signature }) => signature) ? joinSignatures(results) : null,
    arrival:
      arrivals.length === results.length
        ? {
            angle: joinFloats(arrivals.map(({ angle }) => angle)),
            grazing: joinFloats(arrivals.map(({ grazing }) => grazing)),
          }
        : null,
  };
}

function joinFloats(parts: readonly Float64Array[]): Float64Array {
  const joined = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
  let o = 0;
  for (const part of parts) {
    joined.set(part, o);
    o += part.length;
  }
  return joined;
}

/** Where a block has no signature, nothing is hidden: zero. */
function joinSignatures(results: readonly DepositResult[]): Uint32Array {
  const lengths = results.map(({ sums }) => sums[0]?.length ?? 0);
  const joined = new Uint32Array(lengths.reduce((sum, length) => sum + length, 0));
  let o = 0;
  for (const [i, { signature }] of results.entries()) {
    if (signature) joined.set(signature, o);
    o += lengths[i]!;
  }
  return joined;
}
