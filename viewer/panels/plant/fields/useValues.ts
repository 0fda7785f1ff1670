/** The values of a field in all selected parts. */
import { valueAt, type Path } from '../../../state/edits/path.ts';
import { useForm } from './formContext.ts';

/** Stands for values that are not the same in all parts. */
export const VARIOUS = Symbol('various');

/** The value that all parts share, undefined if none has one, or VARIOUS. */
export function useShared(path: Path): unknown {
  const { parts } = useForm();
  const [first, ...others] = parts.map((part) => valueAt(part, path));
  const text = JSON.stringify(first);
  return others.every((other) => JSON.stringify(other) === text) ? first : VARIOUS;
}
