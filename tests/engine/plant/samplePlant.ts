/** Plants of one filament set, for tests of placing. */
import { formatProblem, openPlantFile, type Filament, type NamedFiles, type Plant } from '../../../engine/index.ts';

type Json = Record<string, unknown>;

const COIL = { loops: 1, charge: '1 g', emission: { law: 'open coil' } };

/** A 2 m paraboloid of 10 m radius in a 3 m tank, with one set of one type and whatever else is given. */
export function samplePlant(set: Json, type: Json = {}, rest: Json = {}, files?: NamedFiles): Plant {
  const design = {
    format: 'evenfall',
    version: 1,
    name: 'one set',
    mirror: { radiusOfCurvature: '10 m', conicConstant: -1, outerDiameter: '2 m', holeDiameter: '0.4 m' },
    tank: { diameter: '3 m', depth: '2 m' },
    filamentTypes: { only: { ...COIL, ...type } },
    filaments: [{ name: 'set', type: 'only', ...set }],
    ...rest,
  };
  const opened = openPlantFile(design, files);
  if (!opened.ok) throw new Error(opened.problems.map(formatProblem).join('\n'));
  return opened.plant;
}

/** The filaments of such a plant. */
export function sampleFilaments(set: Json, type: Json = {}, rest: Json = {}): readonly Filament[] {
  return samplePlant(set, type, rest).filaments;
}

/** The only filament of a list of one, at a position in metres. */
export function oneFilament(at: readonly number[], type: Json, own: Json = {}): Filament {
  const position = at.map((x) => `${x} m`);
  const [filament] = sampleFilaments({ arrangement: 'list', filaments: [{ position, ...own }] }, type);
  if (!filament) throw new Error('no filament was placed');
  return filament;
}

/** Vector i of a packed array. */
export function vectorAt(packed: Float64Array, i: number): number[] {
  return [...packed.subarray(3 * i, 3 * i + 3)];
}

/** Largest difference between two vectors' components. */
export function gap(a: ArrayLike<number>, b: ArrayLike<number>): number {
  if (a.length !== b.length) return Infinity;
  return Math.max(0, ...Array.from(a, (x, i) => Math.abs(x - (b[i] ?? NaN))));
}

/** A few operations on lengths of metres, in doubles. */
export const ROUNDING = 1e-14;
