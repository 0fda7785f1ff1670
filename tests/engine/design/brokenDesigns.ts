/** Every design that must be refused with a clear sentence. */
import { BROKEN_COMPANIONS } from './brokenCompanions.ts';
import type { BrokenDesign, Companions } from './brokenDesign.ts';
import { BROKEN_FIELDS } from './brokenFields.ts';
import { BROKEN_VACUUMS } from './brokenVacuums.ts';
import { BROKEN_PLANTS } from './brokenPlants.ts';
import { BROKEN_TEXTS } from './brokenTexts.ts';

export const BROKEN_DESIGNS: readonly BrokenDesign[] = [
  ...BROKEN_TEXTS,
  ...BROKEN_FIELDS,
  ...BROKEN_VACUUMS,
  ...BROKEN_PLANTS,
  ...BROKEN_COMPANIONS,
];

/** Companion files as the engine takes them. */
export function bytesOf(files: Companions = {}): Map<string, Uint8Array<ArrayBuffer>> {
  const encoder = new TextEncoder();
  return new Map(
    Object.entries(files).map(([name, content]) => [
      name,
      typeof content === 'string' ? encoder.encode(content) : content,
    ]),
  );
}
