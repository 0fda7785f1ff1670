/** Which fields of a part have a say at present. */
import { valueAt } from '../../../state/edits/path.ts';

type Condition = (part: unknown) => boolean;

const has =
  (key: string): Condition =>
  (part) =>
    valueAt(part, [key]) !== undefined;
const lacks =
  (key: string): Condition =>
  (part) =>
    !has(key)(part);

/** Fields that are shown under a condition, or never because the form edits them in another way. */
const CONDITIONS: Readonly<Record<string, Condition>> = {
  'mirror.cornerAngle': (part) => valueAt(part, ['outline']) === 'hexagon',
  'type.loops': lacks('path'),
  'type.path': has('path'),
  'type.shield.halfAngle': (part) => valueAt(part, ['shield', 'removes']) === 'cone',
  'type.emission.intensities': () => false,
  'set.filaments': () => false,
  'set.csv': () => false,
  'set.file': () => false,
  'obstacle.data': () => false,
  'obstacle.file': () => false,
  'witness.radius': lacks('position'),
  'witness.angle': lacks('position'),
  'witness.position': has('position'),
  'witness.normal': has('position'),
};

/** Whether a field is shown for all of the parts. */
export function isShown(place: string, parts: readonly unknown[]): boolean {
  const condition = CONDITIONS[place];
  return condition === undefined || parts.every(condition);
}
