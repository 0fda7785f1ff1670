/** One kind of a part turned into another: what fits is kept, the rest gets values that are sound there. */
import type { DesignFile, Filament } from '../../../engine/index.ts';
import { firstSound } from './addPart.ts';
import { tableOfLaw } from './emissionTables.ts';
import { lengthText, metresOf, pointText, type Vector } from './lengths.ts';
import { obstacleOfShape, type SolidShape } from './obstacleShapes.ts';
import { withSet, type Present, type SetFile, type TypeFile } from './parts.ts';
import { withValue } from './path.ts';
import { asSingleFilaments } from './singleFilaments.ts';

export type Arrangement = SetFile['arrangement'];
export type Emission = TypeFile['emission'];

/** The plant with a set in another arrangement. As a list it is the same plant; else it stands near its old place. */
export function withArrangement(present: Present, iSet: number, arrangement: Arrangement): DesignFile {
  const { file, files, plant } = present;
  const set = file.filaments[iSet];
  if (!set || set.arrangement === arrangement) return file;
  if (arrangement === 'list') return asSingleFilaments(file, iSet, files);
  const filaments = plant.filaments.filter((filament) => filament.set === iSet);
  const fileWith = (next: SetFile): DesignFile => withSet(file, iSet, next);
  const shapes = places(filaments, plant.shape.centerX, arrangement);
  const common = commonOf(set, filaments, arrangement);
  const candidates = shapes.map((shape) => ({ ...common, ...shape }) as SetFile);
  return fileWith(firstSound(candidates, fileWith, present) ?? set);
}

/** What every arrangement has; exceptions and feeds as far as there are filaments for them. */
function commonOf(set: SetFile, filaments: readonly Filament[], arrangement: Arrangement): object {
  const { name, type, charge, feeds, exceptions } = set;
  const named = new Set(filaments.flatMap(({ feed }) => feed ?? [])).size;
  const own = set.arrangement === 'list' && charge === undefined ? filaments[0]?.charge : undefined;
  return {
    arrangement,
    name,
    type,
    ...(charge !== undefined && { charge }),
    ...(own !== undefined && { charge: `${own} kg` }),
    ...((feeds ?? named) > 0 && { feeds: feeds ?? named }),
    ...(exceptions && { exceptions }),
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / Math.max(1, values.length);
const spanOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
/** Lengths of a converted set, m: as finely as anyone could set them up. */
const tenth_mm = (value: number): number => Math.round(value * 1e4) / 1e4;
const text = (value: number): string => lengthText(tenth_mm(value), 'm');
const at = ([x, y, z]: Vector) => pointText([tenth_mm(x), tenth_mm(y), tenth_mm(z)], 'm');

/** Places for as many filaments in another arrangement: near the old ones first, then drawn together about their middle. */
function places(filaments: readonly Filament[], centerX: number, arrangement: Exclude<Arrangement, 'list'>): object[] {
  const count = Math.max(1, filaments.length);
  const middle = [0, 1, 2].map((k) => mean(filaments.map(({ center }) => center[k as 0]))) as [number, number, number];
  const radius = mean(filaments.map(({ center: [x, y] }) => Math.hypot(x - centerX, y)));
  return [1, 0.75, 0.5, 0.25].map((share) => {
    if (arrangement === 'ring') return { count, diameter: text(2 * radius * share), height: text(middle[2]) };
    if (arrangement === 'line')
      return {
        count,
        from: at([middle[0] - radius * share, middle[1], middle[2]]),
        to: at([middle[0] + radius * share, middle[1], middle[2]]),
      };
    return { ...gridOf(filaments, count, share), center: at(middle) };
  });
}

function gridOf(filaments: readonly Filament[], count: number, share: number): object {
  // columns and rows whose product is the number of filaments, as square as that allows
  const rows =
    Array.from({ length: Math.floor(Math.sqrt(count)) }, (_, i) => i + 1).findLast((n) => count % n === 0) ?? 1;
  const columns = count / rows;
  const [width, height] = [0, 1].map((k) => spanOf(filaments.map(({ center }) => center[k as 0])));
  const pitch = (span: number | undefined, n: number): string =>
    text(Math.max(0.01, ((span ?? 0) * share) / Math.max(1, n - 1)));
  return { columns, rows, spacing: [pitch(width, columns), pitch(height, rows)] };
}

/** An emission by another law; a table starts as what the old law says. */
export function emissionOfLaw(old: Emission, law: Emission['law']): Emission {
  if (old.law === law) return old;
  return law === 'table' ? tableOfLaw(old) : law === 'cosine power' ? { law, power: 1 } : { law };
}

/** The plant with an obstacle of another shape, about as large and in the same place. */
export function withShape(file: DesignFile, index: number, shape: SolidShape): DesignFile {
  const old = file.obstacles?.[index];
  return !old || old.shape === shape ? file : withValue(file, ['obstacles', index], obstacleOfShape(old, shape));
}

/** The plant with a witness on the mirror's surface, or at a position of its own: in the same place. */
export function withWitnessPlace({ file, plant }: Present, index: number, isFree: boolean): DesignFile {
  const old = file.witnesses?.[index];
  const placed = plant.witnesses[index];
  if (!old || !placed || (old.position !== undefined) === isFree) return file;
  const { name, diameter } = old;
  const common = { name, ...(diameter !== undefined && { diameter }) };
  const [x, y, z] = placed.position;
  // the file's place is rounded; a little above the face it is sure not to be inside the glass
  const above = (v: number): number => Math.ceil(v * 1e4) / 1e4;
  const angle = Math.round((Math.atan2(y, x - plant.shape.centerX) * 1800) / Math.PI) / 10;
  return withValue(
    file,
    ['witnesses', index],
    isFree
      ? {
          ...common,
          position: pointText([tenth_mm(x), tenth_mm(y), above(z)], 'm'),
          normal: placed.normal.map((v) => Number(v.toFixed(6))),
        }
      : { ...common, radius: text(Math.hypot(x - plant.shape.centerX, y)), angle: `${(angle + 360) % 360} deg` },
  );
}

/** A bent wire in place of a type's loops, or loops again; it carries as many clips as before. */
export function withPath(file: DesignFile, name: string, isBent: boolean): DesignFile {
  const type = file.filamentTypes[name];
  if (!type || (type.path !== undefined) === isBent) return file;
  const half = lengthText((metresOf(type.length) || 0.06) / 2, 'm');
  const { path: _path, loops = 1, clipsPerLoop: clips = 1, ...rest } = type;
  const clipsPerLoop = Array.isArray(clips) ? clips.reduce((sum, n) => sum + n, 0) : clips * loops;
  const wire = {
    path: [
      [`-${half}`, '0 m', '0 m'],
      [half, '0 m', '0 m'],
    ],
    emission: { law: 'straight wire' },
  };
  return withValue(file, ['filamentTypes', name], { loops: 1, ...rest, clipsPerLoop, ...(isBent && wire) });
}
