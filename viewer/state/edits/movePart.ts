/** Moves parts of the plant by a vector, and widens and lifts rings. */
import type { DesignFile, NamedFiles } from '../../../engine/index.ts';
import { formatQuantity, parseQuantity } from '../../../engine/index.ts';
import type { Part } from '../selection.ts';
import { lengthText, lengthUnit, metresOf, movedLength, movedPoint, type PointText, type Vector } from './lengths.ts';
import { withValue } from './path.ts';
import { withSet, type ObstacleFile, type SetFile, type WitnessFile } from './parts.ts';
import { asSingleFilaments, hasSingleFilaments } from './singleFilaments.ts';

/**
 * The file with a part moved. A ring that leaves its axis, a table, and the set of a single filament
 * become lists of single filaments in the same edit. A witness on the mirror slides along its surface.
 * What has no place of its own stays as it is.
 *
 * @param delta_m [m] in the mirror's frame
 * @param files content of the files that the design names, if it names any
 */
export function movePart(
  file: DesignFile,
  part: Part,
  delta_m: [number, number, number],
  files?: NamedFiles,
): DesignFile {
  switch (part.kind) {
    case 'set':
      return movedSet(file, part.index, delta_m, files);
    case 'filament':
      return movedFilament(file, part.set, part.number, delta_m, files);
    case 'obstacle': {
      const obstacle = file.obstacles?.[part.index];
      return obstacle ? withValue(file, ['obstacles', part.index], movedObstacle(obstacle, delta_m)) : file;
    }
    case 'witness': {
      const witness = file.witnesses?.[part.index];
      return witness ? withValue(file, ['witnesses', part.index], movedWitness(witness, delta_m)) : file;
    }
    default:
      return file;
  }
}

/** The file with a ring of another size; lengths in metres. Sets that are no rings stay as they are. */
export function setRing(
  file: DesignFile,
  iSet: number,
  { diameter, height }: { readonly diameter?: number | undefined; readonly height?: number | undefined },
): DesignFile {
  const set = file.filaments[iSet];
  if (set?.arrangement !== 'ring') return file;
  return withSet(file, iSet, {
    ...set,
    ...(diameter !== undefined && { diameter: lengthText(diameter, lengthUnit(set.diameter)) }),
    ...(height !== undefined && { height: lengthText(height, lengthUnit(set.height)) }),
  });
}

function movedSet(file: DesignFile, iSet: number, delta: Vector, files: NamedFiles | undefined): DesignFile {
  const set = file.filaments[iSet];
  const moved = set && movedInKind(set, delta);
  if (moved) return withSet(file, iSet, moved);
  const listed = asSingleFilaments(file, iSet, files);
  const list = listed.filaments[iSet];
  return hasSingleFilaments(list) ? movedSet(listed, iSet, delta, files) : file;
}

/** A moved set, or undefined if its arrangement cannot stand there. */
function movedInKind(set: SetFile, delta: Vector): SetFile | undefined {
  switch (set.arrangement) {
    case 'ring':
      return delta[0] === 0 && delta[1] === 0 ? { ...set, height: movedLength(set.height, delta[2]) } : undefined;
    case 'line':
      return { ...set, from: movedPoint(set.from, delta), to: movedPoint(set.to, delta) };
    case 'grid':
      return { ...set, center: movedPoint(set.center, delta) };
    case 'list':
      return (
        set.filaments && {
          ...set,
          filaments: set.filaments.map((row) => ({ ...row, position: movedPoint(row.position, delta) })),
        }
      );
  }
}

function movedFilament(
  file: DesignFile,
  iSet: number,
  number: number,
  delta: Vector,
  files: NamedFiles | undefined,
): DesignFile {
  const listed = asSingleFilaments(file, iSet, files);
  const set = listed.filaments[iSet];
  const row = hasSingleFilaments(set) ? set.filaments[number - 1] : undefined;
  if (!row) return file;
  return withValue(listed, ['filaments', iSet, 'filaments', number - 1, 'position'], movedPoint(row.position, delta));
}

const ORIGIN: PointText = ['0 m', '0 m', '0 m'];

function movedObstacle(obstacle: ObstacleFile, delta: Vector): ObstacleFile {
  if (obstacle.shape === 'mesh') return { ...obstacle, position: movedPoint(obstacle.position ?? ORIGIN, delta) };
  if ('from' in obstacle)
    return { ...obstacle, from: movedPoint(obstacle.from, delta), to: movedPoint(obstacle.to, delta) };
  return { ...obstacle, center: movedPoint(obstacle.center, delta) };
}

function radiansOf(text: string | undefined): number {
  const parsed = parseQuantity(text, 'angle');
  return parsed.ok ? parsed.value : 0;
}

function movedWitness(witness: WitnessFile, delta: Vector): WitnessFile {
  if (witness.position) return { ...witness, position: movedPoint(witness.position, delta) };
  if (delta[0] === 0 && delta[1] === 0) return witness;
  const [radius, angle] = [metresOf(witness.radius), radiansOf(witness.angle)];
  const [x, y] = [radius * Math.cos(angle) + delta[0], radius * Math.sin(angle) + delta[1]];
  const parsed = parseQuantity(witness.angle, 'angle');
  return {
    ...witness,
    radius: lengthText(Math.hypot(x, y), lengthUnit(witness.radius)),
    // a full turn more or less is the same place; people count clock angles from 0
    angle: formatQuantity(Math.atan2(y, x) + (y < 0 ? 2 * Math.PI : 0), 'angle', parsed.ok ? parsed.unit : 'deg', 15),
  };
}
