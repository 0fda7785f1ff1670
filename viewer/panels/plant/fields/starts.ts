/** First values of what a form adds: sections, directions, items of lists. */
import { freeName } from '../../../state/edits/parts.ts';
import type { Field } from './field.ts';

/** First values by place, where the schema alone would give poor ones. */
const STARTS: Readonly<Record<string, unknown>> = {
  'type.shield': { removes: 'half-space', direction: 'away from mirror' },
  'type.emission.direction': [0, 0, -1],
  'set.exceptions': { filament: 1, outOfUse: true },
  'mirror.facing.sideways': '0 deg',
  'film.lastYear': { reflectance: '88 %' },
  // a quarter of a wave of green light
  'film.overcoat': { material: 'MgF2', thickness: '100 nm' },
  'obstacle.normal': [0, 0, 1],
  'witness.normal': [0, 0, 1],
  'vacuum.system.pumps.line': { part: 'tube', diameter: '100 mm', length: '1 m' },
  'vacuum.system.pumps.line.diameter': '100 mm',
  'vacuum.system.pumps.line.length': '1 m',
  'vacuum.system.surfaces': { material: 'stainless steel', area: '1 m2' },
  'vacuum.system.coldTrap': { area: '0.5 m2' },
};

/** First rows of lists that need more than one row to be sound. */
const FIRST_ROWS: Readonly<Record<string, readonly unknown[]>> = {
  'vacuum.system.pumps.curve': [
    ['1e-3 mbar', '1000 l/s'],
    ['1e-2 mbar', '500 l/s'],
  ],
};

/** A value that a field can begin with. */
export function startOf(field: Field): unknown {
  if (field.kind !== 'list' && field.place in STARTS) return STARTS[field.place];
  if (field.fallback !== undefined) return field.fallback;
  switch (field.kind) {
    case 'quantity':
      return field.dimension === 'length' ? '0 m' : field.dimension === 'angle' ? '0 deg' : field.example;
    case 'number':
      return Number(field.example ?? 1);
    case 'words':
      return field.words[0];
    case 'truth':
      return false;
    case 'fixed':
      return field.value;
    case 'tuple':
      return isDirection(field) ? [0, 0, 1] : field.items.map(startOf);
    case 'list':
      return Array.from({ length: Math.max(1, field.min) }, () => startOf(field.item));
    case 'group':
      return Object.fromEntries(
        field.fields.filter(({ isOptional }) => !isOptional).map((one) => [one.key, startOf(one)]),
      );
    case 'either':
      return field.options[0] && startOf(field.options[0]);
    case 'choice':
    case 'text':
      return '';
  }
}

function isDirection(field: Extract<Field, { kind: 'tuple' }>): boolean {
  return field.items.every(({ kind }) => kind === 'number');
}

/** A list with one more row; with its first rows, if it has none. */
export function withNextItem(field: Extract<Field, { kind: 'list' }>, items: readonly unknown[]): readonly unknown[] {
  const first = items.length === 0 ? FIRST_ROWS[field.place] : undefined;
  return first ?? [...items, nextItem(field, items)];
}

/** One more item for a list, different from those that it has where they must differ. */
export function nextItem(field: Extract<Field, { kind: 'list' }>, items: readonly unknown[]): unknown {
  switch (field.place) {
    case 'mirror.aspheric': {
      const power = 2 + Math.max(2, ...items.map((item) => Number((item as { power?: unknown }).power) || 0));
      return { power, coefficient: `0 m^-${power - 1}` };
    }
    case 'set.exceptions':
      return { filament: firstFree(items), outOfUse: true };
    case 'type.path': {
      const [x = '0 m', y = '0 m', z = '0 m'] = (items.at(-1) ?? []) as string[];
      return [x, y, stepped(z)];
    }
    case 'vacuum.system.pumps': {
      const all = items as readonly { readonly name: string }[];
      const last = all.at(-1);
      return {
        ...last,
        name: freeName(
          last?.name ?? 'pump',
          all.map(({ name }) => name),
        ),
      };
    }
    case 'vacuum.system.pumps.curve': {
      const [pressure, speed] = items.at(-1) as readonly [string, string];
      return [tenfold(pressure), speed];
    }
    case 'vacuum.system.surfaces':
      return startOf(field.item);
    default:
      return items.at(-1) ?? startOf(field.item);
  }
}

/** A quantity ten times as large, in its own unit. */
function tenfold(text: string): string {
  const [, number = '', unit = ''] = /^\s*(\S+?)\s*([^\d\s.+-]\S*)\s*$/.exec(text) ?? [];
  return `${Number((10 * Number(number)).toPrecision(9))} ${unit}`;
}

function firstFree(items: readonly unknown[]): number {
  const taken = new Set(items.map((item) => (item as { filament?: unknown }).filament));
  for (let n = 1; ; n++) if (!taken.has(n)) return n;
}

/** A coordinate a centimetre further in its own unit, so that a corner differs from the one before. */
function stepped(text: string): string {
  const match = /^\s*([+-]?[\d.]+)\s*(m|mm|cm)\s*$/.exec(text);
  const step = { m: 0.01, cm: 1, mm: 10 }[match?.[2] ?? ''];
  return match && step !== undefined ? `${Number((Number(match[1]) + step).toFixed(9))} ${match[2]}` : '10 mm';
}
