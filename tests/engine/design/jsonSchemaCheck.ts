/**
 * A validator for the keywords that the design's schema uses.
 *
 * @see JSON Schema draft 2020-12, Core (10.3 applicators) and Validation (6 assertions), from memory
 */

export interface JsonSchema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly propertyNames?: JsonSchema;
  readonly additionalProperties?: JsonSchema | boolean;
  readonly items?: JsonSchema | false;
  readonly prefixItems?: readonly JsonSchema[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly description?: string;
  readonly [keyword: string]: unknown;
}

const ASSERTED = new Set(
  'type const enum required properties propertyNames additionalProperties items prefixItems minItems maxItems maxLength minimum maximum anyOf oneOf'.split(
    ' ',
  ),
);
const ANNOTATIONS = new Set(['$schema', 'title', 'description', 'examples', 'default']);

function isOfType(value: unknown, type: string): boolean {
  switch (type) {
    case 'object':
      return typeof value === 'object' && value !== null && !Array.isArray(value);
    case 'array':
      return Array.isArray(value);
    case 'integer':
      return Number.isInteger(value);
    default:
      return typeof value === type;
  }
}

/** What in a value violates a schema, as paths with the keyword; a keyword unknown here is an error. */
export function faultsBySchema(schema: JsonSchema, value: unknown, path = '$'): string[] {
  for (const keyword of Object.keys(schema))
    if (!ASSERTED.has(keyword) && !ANNOTATIONS.has(keyword)) throw new Error(`${path}: unknown keyword ${keyword}`);
  if (schema.type !== undefined && !isOfType(value, schema.type)) return [`${path}: type`];
  const faults: string[] = [];
  const check = (holds: boolean, keyword: string): void => void (holds || faults.push(`${path}: ${keyword}`));
  check(schema.const === undefined || schema.const === value, 'const');
  check(!schema.enum || schema.enum.includes(value), 'enum');
  const fits = (branch: JsonSchema): boolean => faultsBySchema(branch, value, path).length === 0;
  check(!schema.anyOf || schema.anyOf.some(fits), 'anyOf');
  check(!schema.oneOf || schema.oneOf.filter(fits).length === 1, 'oneOf');
  if (typeof value === 'number')
    check(value >= (schema.minimum ?? -Infinity) && value <= (schema.maximum ?? Infinity), 'minimum or maximum');
  if (typeof value === 'string') check(value.length <= (schema.maxLength ?? Infinity), 'maxLength');
  if (Array.isArray(value)) faults.push(...arrayFaults(schema, value, path));
  else if (typeof value === 'object' && value !== null)
    faults.push(...objectFaults(schema, value as Record<string, unknown>, path));
  return faults;
}

function arrayFaults(schema: JsonSchema, value: readonly unknown[], path: string): string[] {
  const faults: string[] = [];
  const { minItems = 0, maxItems = Infinity, prefixItems = [], items } = schema;
  if (value.length < minItems || value.length > maxItems) faults.push(`${path}: minItems or maxItems`);
  value.forEach((item, i) => {
    const rule = prefixItems[i] ?? items;
    if (rule === false) faults.push(`${path}[${i}]: items`);
    else if (rule) faults.push(...faultsBySchema(rule, item, `${path}[${i}]`));
  });
  return faults;
}

function objectFaults(schema: JsonSchema, value: Readonly<Record<string, unknown>>, path: string): string[] {
  const { properties = {}, required = [], additionalProperties, propertyNames } = schema;
  const faults = required.filter((key) => value[key] === undefined).map((key) => `${path}: required ${key}`);
  for (const [key, item] of Object.entries(value)) {
    if (item === undefined) continue;
    if (propertyNames) faults.push(...faultsBySchema(propertyNames, key, `${path}.${key}`));
    const rule = Object.hasOwn(properties, key) ? properties[key] : additionalProperties;
    if (rule === false) faults.push(`${path}.${key}: additionalProperties`);
    else if (typeof rule === 'object') faults.push(...faultsBySchema(rule, item, `${path}.${key}`));
  }
  return faults;
}
