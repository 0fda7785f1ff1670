/** One field of a part set by its path, with what must change along so that the design stays sound. */
import type { DesignFile, NamedFiles } from '../../../engine/index.ts';
import type { Part } from '../selection.ts';
import { withOutOfUse, withOwnCharge } from './ownValues.ts';
import { pathOfPart } from './parts.ts';
import { valueAt, withValue, type Path } from './path.ts';
import { asSingleFilaments } from './singleFilaments.ts';

/**
 * The file with a field of a part set.
 *
 * @param path within the part's own section; of the plant itself, where part is null, within the file
 * @param value as it stands in a file; undefined takes the field away, so that its default holds again
 */
export function withField(
  file: DesignFile,
  part: Part | null,
  path: Path,
  value: unknown,
  files?: NamedFiles,
): DesignFile {
  if (part === null) return withValue(file, path, value);
  if (part.kind === 'filament') return withFilamentField(file, part, path, value, files);
  const place = pathOfPart(part);
  if (!place) return file;
  const next = withValue(file, [...place, ...path], value);
  return part.kind === 'type' ? withCompanions(next, place, path, value) : next;
}

function withFilamentField(
  file: DesignFile,
  part: Extract<Part, { kind: 'filament' }>,
  path: Path,
  value: unknown,
  files: NamedFiles | undefined,
): DesignFile {
  if (path[0] === 'outOfUse') return withOutOfUse(file, [part], value === true);
  if (path[0] === 'charge') return withOwnCharge(file, [part], value as string | undefined);
  const listed = asSingleFilaments(file, part.set, files);
  return withValue(listed, ['filaments', part.set, 'filaments', part.number - 1, ...path], value);
}

/** Angle of a cone that begins to be one. */
const NEW_CONE = '60 deg';

/** What changes with a field of a type. */
function withCompanions(file: DesignFile, place: Path, path: Path, value: unknown): DesignFile {
  const clips = valueAt(file, [...place, 'clipsPerLoop']);
  switch (path.join('.')) {
    case 'loops': {
      if (!Array.isArray(clips) || typeof value !== 'number' || !(value >= 1 && value <= 1000)) return file;
      const counts = Array.from({ length: value }, (_, i): unknown => clips[Math.min(i, clips.length - 1)]);
      return withValue(file, [...place, 'clipsPerLoop'], counts);
    }
    case 'emission.direction':
      return value === undefined ? file : withValue(file, [...place, 'emission', 'tilt'], undefined);
    case 'emission.tilt':
      return value === undefined ? file : withValue(file, [...place, 'emission', 'direction'], undefined);
    case 'shield.removes':
      return withValue(file, [...place, 'shield', 'halfAngle'], value === 'cone' ? NEW_CONE : undefined);
    default:
      return file;
  }
}

/** The values of a part as its form shows them; of a filament, what it has of its own. */
export function partValue(file: DesignFile, part: Part | null): unknown {
  if (part === null) return file;
  if (part.kind !== 'filament') return valueAt(file, pathOfPart(part) ?? []);
  const set = file.filaments[part.set];
  const own = set?.exceptions?.find(({ filament }) => filament === part.number);
  const row = valueAt(set, ['filaments', part.number - 1]);
  return {
    ...(typeof row === 'object' ? row : {}),
    ...(own?.charge !== undefined && { charge: own.charge }),
    outOfUse: own?.outOfUse ?? false,
  };
}
