/** The map on few points: a smooth field less what obstacles hide of it, and directly what no field describes. */
import type { Fields } from '../field/fields.ts';
import { singleError } from '../transport/depositKernel.ts';
import { joinDeposits, type Job } from './job.ts';
import type { FaceMap, PreparedFace } from './preparedFace.ts';
import { mixedCells } from './refineAtShadows.ts';
import { addFieldTo, clearSources, hasObstacles, restOf } from './smoothPart.ts';
import { hiddenByTurns, turnedFilaments, type Hidden } from './turnedShadows.ts';

/** A map with a bound of what few points and few digits leave out. */
export interface MixedMap extends FaceMap {
  /** kg/m² */
  readonly fieldError: number;
}

export interface MixedMapRequest {
  readonly grid: PreparedFace;
  readonly job: Job;
  /** [filaments] kg */
  readonly masses: Float64Array;
  /** of the field anywhere, over its mean */
  readonly wantedError: number;
  readonly fields: Fields;
  /** sums filaments at every point of the grid */
  readonly directMap: (job: Job, masses: Float64Array) => Promise<FaceMap>;
}

/** Makes the map. What is summed at every point is summed in single precision. */
export async function mixedMap({
  grid,
  job,
  masses,
  wantedError,
  fields,
  directMap,
}: MixedMapRequest): Promise<MixedMap> {
  const clear = clearSources(job.scene, job.sources);
  const sources = clear.map((f) => job.sources[f]!);
  const charges = Float64Array.from(clear, (f) => masses[f]!);
  const inSingle: Job = { ...job, precision: 'single' };
  const shaded = (of: Float64Array): Promise<Hidden> | null =>
    hasObstacles(job.scene) ? hiddenAt(grid, { ...inSingle, sources }, of) : null;
  // most plants have no filament that no field describes: what is hidden need not wait for who they are
  const [field, foreseen] = await Promise.all([
    fields.solve({ scene: job.scene, sources, masses: charges, wantedError }),
    shaded(charges),
  ]);
  for (const f of field.rough) charges[f] = 0;
  const rest = restOf(job.sources.length, clear, field.rough);
  const [hidden, { prepared, areal }] = await Promise.all([
    field.rough.length > 0 ? shaded(charges) : foreseen,
    directMap(
      { ...inSingle, sources: rest.map((f) => job.sources[f]!) },
      Float64Array.from(rest, (f) => masses[f]!),
    ),
  ]);
  const single = Math.max(0, ...job.sources.map(({ source }) => singleError(source.law)));
  return {
    prepared: {
      ...prepared,
      mixed: [...new Set([...prepared.mixed, ...mixedCells(grid.face.cells, hidden?.signature ?? null)])],
    },
    areal: addFieldTo(areal, field, hidden?.sum ?? null, grid.face),
    fieldError: field.error + single * (largest(areal) + (hidden ? largest(hidden.sum) : 0)),
  };
}

function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) if (values[i]! > most) most = values[i]!;
  return most;
}

/** What obstacles hide of some filaments' deposit; turned filaments share a column where the obstacles allow it. */
async function hiddenAt(grid: PreparedFace, job: Job, masses: Float64Array): Promise<Hidden> {
  const classes = turnedFilaments(grid.face, job.scene, job.sources);
  if (!classes) return hiddenOf(grid, job, masses);
  const alone = Float64Array.of(1);
  const leads = classes.map(async ({ lead }) => hiddenOf(grid, { ...job, sources: [job.sources[lead]!] }, alone));
  return hiddenByTurns(classes, await Promise.all(leads), masses);
}

async function hiddenOf(grid: PreparedFace, { transport, control, ...of }: Job, masses: Float64Array): Promise<Hidden> {
  const request = {
    ...of,
    blocks: grid.blocks,
    mixes: [masses],
    part: 'hidden',
    withSignature: true,
    withArrival: false,
  } as const;
  const { sums, signature } = joinDeposits(await transport.deposit(request, control));
  return { sum: sums[0]!, signature: signature ?? new Uint32Array(sums[0]!.length) };
}
