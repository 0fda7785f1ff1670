/** Turns the schema of a design into fields of a form, so that forms and checks cannot disagree. */
import { DIMENSIONS, parseQuantity, type DimensionName } from '../../../../engine/design/quantity.ts';
import { designSchema } from '../../../../engine/design/designSchema.ts';
import type { Field, FieldKind } from './field.ts';
import { HELP, labelOf, LABELS, lookUp } from './words.ts';

/** What is read of a schema here. */
interface Schema {
  readonly def: {
    readonly type: string;
    readonly innerType?: Schema;
    readonly in?: Schema;
    readonly defaultValue?: unknown;
    readonly discriminator?: string;
    readonly items?: readonly Schema[];
    readonly values?: readonly unknown[];
    readonly checks?: readonly {
      readonly _zod: { readonly def: { readonly minimum?: number; readonly maximum?: number } };
    }[];
  };
  readonly meta: () => { readonly description?: string; readonly examples?: readonly unknown[] } | undefined;
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly element?: Schema;
  readonly options?: readonly unknown[];
}

/** A schema without what is wrapped around it, and what the wrapping says. */
interface Unwrapped {
  readonly schema: Schema;
  readonly description: string | undefined;
  readonly example: unknown;
  readonly isOptional: boolean;
  readonly fallback: unknown;
}

const WRAPPERS = ['optional', 'default', 'prefault'];

function unwrapped(schema: Schema, outer: Omit<Unwrapped, 'schema'>): Unwrapped {
  const meta = schema.meta();
  const { type, innerType, in: input, defaultValue } = schema.def;
  const told = {
    description: outer.description ?? meta?.description,
    example: outer.example ?? meta?.examples?.[0],
    isOptional: outer.isOptional || WRAPPERS.includes(type),
    fallback: outer.fallback ?? defaultValue,
  };
  const inner = type === 'pipe' ? input : innerType;
  return inner ? unwrapped(inner, told) : { schema, ...told };
}

const BARE = { description: undefined, example: undefined, isOptional: false, fallback: undefined };

/** The dimension that an example is a quantity of. */
function dimensionOf(example: unknown): DimensionName | undefined {
  return (Object.keys(DIMENSIONS) as DimensionName[]).find((name) => parseQuantity(example, name).ok);
}

/** Limits of a list's length, from its checks. */
function lengthLimits({ def: { checks = [] } }: Schema): { readonly min: number; readonly max: number } {
  const limits = checks.map((check) => check._zod.def);
  return {
    min: Math.max(0, ...limits.flatMap(({ minimum }) => minimum ?? [])),
    max: Math.min(Infinity, ...limits.flatMap(({ maximum }) => maximum ?? [])),
  };
}

function sectionFields(schema: Schema, place: string): Field[] {
  return Object.entries(schema.shape ?? {}).map(([key, field]) => readField(field, key, `${place}.${key}`));
}

/** Which literal tells a section of a choice from the others. */
function wordOf(section: Schema, by: string): string {
  return String(section.shape?.[by]?.def.values?.[0]);
}

function readKind(schema: Schema, example: unknown, place: string): FieldKind {
  const { type, discriminator, items = [], values = [] } = schema.def;
  switch (type) {
    case 'string': {
      const dimension = dimensionOf(example);
      return dimension ? { kind: 'quantity', dimension } : { kind: 'text' };
    }
    case 'number':
      return { kind: 'number' };
    case 'boolean':
      return { kind: 'truth' };
    case 'enum':
      return { kind: 'words', words: (schema.options ?? []).map(String) };
    case 'literal':
      return { kind: 'fixed', value: values[0] };
    case 'tuple':
      return {
        kind: 'tuple',
        items: items.map((item, i) => readField(item, 'xyz'.charAt(i), `${place}.${'xyz'.charAt(i)}`)),
      };
    case 'array':
      return { kind: 'list', item: readField(schema.element as Schema, '', place), ...lengthLimits(schema) };
    case 'object':
      return { kind: 'group', fields: sectionFields(schema, place) };
    case 'union': {
      const options = (schema.options ?? []) as readonly Schema[];
      if (discriminator === undefined)
        return { kind: 'either', options: options.map((option) => readField(option, '', place)) };
      return {
        kind: 'choice',
        by: discriminator,
        options: new Map(
          options.map((option) => {
            const section = unwrapped(option, BARE).schema;
            return [wordOf(section, discriminator), sectionFields(section, place)];
          }),
        ),
      };
    }
    default:
      throw new Error(`a form has no field for a schema of the kind "${type}" at ${place}`);
  }
}

function readField(outer: Schema, key: string, place: string): Field {
  const { schema, description, example, isOptional, fallback } = unwrapped(outer, BARE);
  return {
    ...readKind(schema, example, place),
    key,
    place,
    label: key === '' ? '' : (lookUp(LABELS, place) ?? labelOf(key)),
    help: HELP[place] ?? description ?? '',
    example: example === undefined ? undefined : String(example as string | number),
    isOptional,
    fallback,
  };
}

const { shape } = designSchema;
const read = (schema: unknown, place: string): Field => readField(schema as Schema, place, place);

/** The forms of a plant, by kind of part; of the plant itself, its name and story. */
export const FORMS = {
  name: read(shape.name, 'name'),
  story: read(shape.story, 'story'),
  mirror: read(shape.mirror, 'mirror'),
  tank: read(shape.tank, 'tank'),
  type: read(shape.filamentTypes.valueType, 'type'),
  set: read(shape.filaments.element, 'set'),
  obstacle: read(shape.obstacles.unwrap().element, 'obstacle'),
  witness: read(shape.witnesses.unwrap().element, 'witness'),
  vacuum: read(shape.vacuum, 'vacuum'),
  film: read(shape.film, 'film'),
} as const satisfies Readonly<Record<string, Field>>;

/** The fields of one section; of a choice, those of one option. */
export function fieldsOf(field: Field | undefined, word = ''): readonly Field[] {
  if (field?.kind === 'group') return field.fields;
  return field?.kind === 'choice' ? (field.options.get(word) ?? []) : [];
}

function listItem(key: string): readonly Field[] {
  const list = fieldsOf(FORMS.set, 'list').find((field) => field.key === key);
  return list?.kind === 'list' ? fieldsOf(list.item) : [];
}

/** The fields of one filament: those of a list's row, and whether it is out of use. */
export const FILAMENT_FIELDS: readonly Field[] = [
  ...listItem('filaments'),
  ...listItem('exceptions').filter(({ key }) => key === 'outOfUse'),
];
