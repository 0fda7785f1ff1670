/** The tanks that lessons take their numbers from, and changed copies of them. */
import { formatProblem, openPlantFile, type DesignFile, type Plant } from '../../../engine/index.ts';
import { presets } from '../../../presets/index.ts';
import type { Bench } from './lesson.ts';

const NO_FILES: Bench['files'] = new Map();

function opened(file: unknown, files: Bench['files']): Bench {
  const result = openPlantFile(file, files);
  if (!result.ok) throw new RangeError(result.problems.map(formatProblem).join('; '));
  return { file: result.file, files, plant: result.plant };
}

/** The bell jar of the presets. */
export function teachingBench(): Bench {
  const preset = presets.find(({ id }) => id === 'teaching-tank');
  if (!preset) throw new Error('expected a preset "teaching-tank"; found none');
  return opened(preset.file, NO_FILES);
}

/**
 * The plant of a changed design.
 *
 * @throws RangeError with all problems if the engine refuses it
 */
export function changedPlant({ file, files }: Bench, change: (file: DesignFile) => unknown): Plant {
  return opened(change(file), files).plant;
}

/** A length as design files write it. */
export const inMetres = (value: number): string => `${value} m`;

/** The filaments that evaporate something, by index. */
export function firing({ filaments }: Plant): number[] {
  return filaments.flatMap(({ charge, outOfUse }, i) => (charge > 0 && !outOfUse ? [i] : []));
}

/** The first filament that fires. @throws RangeError if none does */
export function firstFiring(plant: Plant): number {
  const [first] = firing(plant);
  if (first === undefined)
    throw new RangeError(
      'no filament of this design evaporates anything; choose the teaching tank, or give one a charge',
    );
  return first;
}
