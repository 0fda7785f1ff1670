/** What a form knows of one field of a design, read from the schema that also checks it. */
import type { DimensionName } from '../../../../engine/index.ts';

/** How a field is filled in. */
export type FieldKind =
  | { readonly kind: 'quantity'; readonly dimension: DimensionName }
  | { readonly kind: 'text' }
  | { readonly kind: 'number' }
  | { readonly kind: 'words'; readonly words: readonly string[] }
  | { readonly kind: 'truth' }
  | { readonly kind: 'fixed'; readonly value: unknown }
  | { readonly kind: 'tuple'; readonly items: readonly Field[] }
  | { readonly kind: 'list'; readonly item: Field; readonly min: number; readonly max: number }
  | { readonly kind: 'group'; readonly fields: readonly Field[] }
  | { readonly kind: 'choice'; readonly by: string; readonly options: ReadonlyMap<string, readonly Field[]> }
  | { readonly kind: 'either'; readonly options: readonly Field[] };

export type Field = FieldKind & {
  /** its key in its section */
  readonly key: string;
  /** where it stands, such as "mirror.clearAperture.outerDiameter" */
  readonly place: string;
  readonly label: string;
  readonly help: string;
  /** a value as people write it */
  readonly example: string | undefined;
  /** whether it may be left out */
  readonly isOptional: boolean;
  /** what holds if it is left out, as it would stand in the file */
  readonly fallback: unknown;
};
