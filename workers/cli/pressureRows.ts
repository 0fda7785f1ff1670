/** A shot at many pressures: one row of numbers each. */
import { csvFormatRows } from 'd3-dsv';
import type { Evaluator, Plant } from '../../engine/index.ts';
import { gasCoat } from '../../engine/gas/gasCoat.ts';
import type { ChunkRunner } from '../../engine/gas/scatter.ts';
import type { Counted } from '../../engine/gas/scatterSummary.ts';
import { plantGas } from '../../engine/gas/scatterProblem.ts';
import { staged } from '../../engine/transport/staged.ts';
import type { Control } from '../../engine/transport/transport.ts';

export interface PressureRow {
  /** Pa */
  readonly pressure: number;
  /** m, with standard errors of the counted atoms */
  readonly mean: Counted;
  readonly minimum: Counted;
  readonly maximum: Counted;
  /** (max − min)/(max + min) */
  readonly uniformity: Counted;
  /** shares of all vapour */
  readonly straight: Counted;
  readonly scattered: Counted;
  readonly lost: Counted;
  readonly atoms: number;
}

/** Atoms of each pressure at most: standard errors of the shares below a fifth of a percent. */
const MOST_ATOMS = 2 ** 16;

export interface SweepTools {
  readonly evaluator: Evaluator;
  readonly fly: ChunkRunner;
  readonly points: number;
  readonly seed: number;
}

/** Lays the coat at each pressure, in the plant's own gas; the same seed throughout. */
export async function pressureRows(
  plant: Plant,
  pressures: Float64Array,
  { evaluator, fly, points, seed }: SweepTools,
  control?: Control,
): Promise<PressureRow[]> {
  const rows: PressureRow[] = [];
  for (const [i, pressure] of pressures.entries()) {
    const options = {
      choices: { gas: { ...plantGas(plant), pressure }, seed },
      points,
      maxAtoms: MOST_ATOMS,
      run: fly,
    };
    const part = staged(control, i / pressures.length, (i + 1) / pressures.length);
    const { scattered, inGas } = await gasCoat(evaluator, plant, options, part);
    const { statistics: s, standardErrors: e } = inGas;
    const { summary } = scattered;
    rows.push({
      pressure,
      mean: { value: s.mean.value, standardError: e.mean },
      minimum: { value: s.minimum.value, standardError: e.minimum },
      maximum: { value: s.maximum.value, standardError: e.maximum },
      uniformity: { value: s.uniformity.value, standardError: e.uniformity },
      straight: summary.ballisticOnMirror,
      scattered: summary.scatteredOnMirror,
      lost: summary.lost,
      atoms: summary.atoms,
    });
  }
  return rows;
}

const PA_PER_MBAR = 100;
const digits = (value: number, count = 6): string => String(Number(value.toPrecision(count)));

/** All numbers as CSV; errors are standard errors of the counted atoms. */
export function pressureCsv(rows: readonly PressureRow[]): string {
  const head = [
    'mean_nm',
    'min_nm',
    'max_nm',
    'uniformity_percent',
    'straight_percent',
    'scattered_percent',
    'lost_percent',
  ];
  const columns = head.flatMap((name) => [name, name.replace(/_(nm|percent)$/, '_error_$1')]);
  const lines = rows.map((row) => [
    digits(row.pressure / PA_PER_MBAR),
    ...[row.mean, row.minimum, row.maximum].flatMap(({ value, standardError }) => [
      digits(1e9 * value),
      digits(1e9 * standardError, 2),
    ]),
    ...[row.uniformity, row.straight, row.scattered, row.lost].flatMap(({ value, standardError }) => [
      digits(100 * value),
      digits(100 * standardError, 2),
    ]),
    String(row.atoms),
  ]);
  return `${csvFormatRows([['pressure_mbar', ...columns, 'atoms'], ...lines])}\n`;
}

const withError = ({ value, standardError }: Counted, factor: number, decimals: number): string =>
  `${(factor * value).toFixed(decimals)} ± ${(factor * standardError).toFixed(decimals)}`;

/** Rows of cells set right-aligned under each other. */
function columns(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  return rows.map((row) => `  ${row.map((cell, i) => cell.padStart(widths[i]!)).join('  ')}`).join('\n');
}

/** The same for reading. */
export function pressureReport({ name, vacuum }: Plant, rows: readonly PressureRow[], seed: number): string {
  const head = ['mbar', 'mean, nm', 'thinnest, nm', 'uniformity, %', 'straight, %', 'scattered, %', 'elsewhere, %'];
  const lines = rows.map((row) => [
    (row.pressure / PA_PER_MBAR).toExponential(1),
    withError(row.mean, 1e9, 2),
    withError(row.minimum, 1e9, 2),
    `±${withError(row.uniformity, 100, 2)}`,
    withError(row.straight, 100, 2),
    withError(row.scattered, 100, 2),
    withError(row.lost, 100, 2),
  ]);
  const note = `Shares of all vapour: straight and scattered onto the mirror, and elsewhere. Errors: standard errors of counted atoms, seed ${seed}.`;
  return `${name}, in ${vacuum.gas} at each pressure\n\n${columns([head, ...lines])}\n\n${note}\n`;
}
