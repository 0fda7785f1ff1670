/** One place in a design: what the file says there, what it means in SI, and what the schema says about it. */
import { designJsonSchema, type DesignFile } from '../../../engine/index.ts';
import { designSchema } from '../../../engine/design/designSchema.ts';

export type Json = Readonly<Record<string, unknown>>;

export interface Spot {
  /** as written in the file; undefined where the file leaves it out */
  readonly raw: unknown;
  /** SI, defaults filled in */
  readonly value: unknown;
  /** parts of the JSON Schema that can apply here */
  readonly schemas: readonly Json[];
}

export function isRecord(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

let wholeSchema: Json | undefined;

/** The whole of a sound design. */
export function designSpot(file: DesignFile): Spot {
  wholeSchema ??= designJsonSchema() as Json;
  return { raw: file, value: designSchema.parse(file), schemas: [wholeSchema] };
}

/** Whether a form of a choice is the one that a value has taken: all its fixed words agree. */
function fits(schema: Json, value: unknown): boolean {
  if (!isRecord(schema['properties'])) return true;
  if (!isRecord(value)) return false;
  return Object.entries(schema['properties']).every(
    ([key, property]) => !isRecord(property) || property['const'] === undefined || property['const'] === value[key],
  );
}

/** A schema with the forms of its choices that fit the value. */
function expanded(schema: Json, value: unknown): readonly Json[] {
  const forms = [schema['oneOf'], schema['anyOf']].flatMap((list) => (Array.isArray(list) ? (list as Json[]) : []));
  return [schema, ...forms.filter((form) => fits(form, value)).flatMap((form) => expanded(form, value))];
}

function below(schema: Json, key: string | number): readonly unknown[] {
  if (typeof key === 'number') {
    const tuple = schema['prefixItems'];
    return [Array.isArray(tuple) ? (tuple as unknown[])[key] : schema['items']];
  }
  const { properties, additionalProperties } = schema as { properties?: Json; additionalProperties?: unknown };
  return [properties?.[key] ?? additionalProperties];
}

function inside(container: unknown, key: string | number): unknown {
  return typeof container === 'object' && container !== null && Object.hasOwn(container, key)
    ? (container as Record<string | number, unknown>)[key]
    : undefined;
}

/** The place one step further in. */
export function stepInto({ raw, value, schemas }: Spot, key: string | number): Spot {
  const nextRaw = inside(raw, key);
  const next = schemas
    .flatMap((schema) => expanded(schema, raw ?? value))
    .flatMap((schema) => below(schema, key))
    .filter(isRecord);
  return { raw: nextRaw, value: inside(value, key), schemas: next };
}

/** What the schema says a place is for. */
export function descriptionOf({ schemas, raw, value }: Spot): string | undefined {
  const found = schemas
    .flatMap((schema) => expanded(schema, raw ?? value))
    .find((schema) => typeof schema['description'] === 'string');
  return found?.['description'] as string | undefined;
}

/** What stands in the file, or the default that the schema puts there. */
export function writtenOf({ raw, value, schemas }: Spot): unknown {
  if (raw !== undefined || value === undefined) return raw;
  return schemas.find((schema) => schema['default'] !== undefined)?.['default'] ?? value;
}
