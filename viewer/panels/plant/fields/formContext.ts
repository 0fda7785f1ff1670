/** What the fields of a form share: how they change the design, and where they explain themselves. */
import { createContext, useContext, type ComponentType } from 'react';
import type { Path } from '../../../state/edits/path.ts';
import type { Field } from './field.ts';

export interface Form {
  /**
   * Changes a field of all selected parts.
   *
   * @param path within each part
   * @param change from the old value of a part to its new one
   * @param noun what is edited, such as "diameter"
   * @returns why not, or null if it was done
   */
  readonly change: (path: Path, change: (old: unknown) => unknown, noun: string) => string | null;
  /** what holds where a field is left out, as the file would say it; undefined if nothing does */
  readonly defaultText: (field: Field) => string | undefined;
  /** the control for any field: sections and lists hold others, which could not import them in turn */
  readonly Control: ComponentType<ControlProps>;
  /** the sections of all selected parts */
  readonly parts: readonly unknown[];
}

export const FormContext = createContext<Form | null>(null);

export function useForm(): Form {
  const form = useContext(FormContext);
  if (!form) throw new Error('expected a field inside a form; found it alone');
  return form;
}

/** What every control of a form is told. */
export interface ControlProps {
  readonly field: Field;
  /** within the part */
  readonly path: Path;
  /** the name that a screen reader hears, where the field's own label is not enough */
  readonly name?: string | undefined;
}
