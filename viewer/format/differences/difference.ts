/** One thing that differs between two designs. */
import type { DesignFile, NamedFiles, Plant } from '../../../engine/index.ts';

export interface Difference {
  readonly kind: 'changed' | 'added' | 'removed' | 'renamed';
  /** what it is about: "ring outer", "filaments outer 3 and 7", "film" */
  readonly part: string;
  /** a whole line that names the part: "ring outer: diameter 2.9 m → 2.7 m" */
  readonly text: string;
}

/** A sound design with its plant and the content of the files that it names. */
export interface Comparable {
  readonly file: DesignFile;
  readonly files: NamedFiles;
  readonly plant: Plant;
}
