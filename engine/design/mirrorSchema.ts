/** The mirror and the tank around it. */
import { z } from 'zod';
import {
  choice,
  count,
  direction,
  label,
  list,
  NOT_NEGATIVE,
  plainNumber,
  point,
  POSITIVE,
  quantity,
  section,
} from './fields.ts';
import { parseQuantity, quoteValue } from './quantity.ts';

const COEFFICIENT =
  /^\s*([+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)\s*(?:\/\s*(mm|m)\s*\^?\s*(\d+)|(mm|m)\s*\^?\s*-\s*(\d+))\s*$/;

/** One term a·r^power; the coefficient's unit is a length to the power (1 − power). */
const asphericTerm = section('an aspheric term', {
  power: count('the even power of r', 4, 20).refine((power) => power % 2 === 0, {
    error: ({ input }) => `expected an even power from 4 to 20; found ${quoteValue(input)}`,
  }),
  coefficient: z
    .string({
      error: ({ input }) => `expected a coefficient with its unit, such as "1.2e-6 m^-3"; found ${quoteValue(input)}`,
    })
    .meta({
      description: 'a, with the unit m or mm to the power 1 − power',
      examples: ['1.2e-6 m^-3'],
    }),
}).transform(({ power, coefficient }, context) => {
  const match = COEFFICIENT.exec(coefficient);
  const unitPower = Number(match?.[3] ?? match?.[5]);
  if (!match || unitPower !== power - 1) {
    const message = `expected a coefficient in m^-${power - 1} or mm^-${power - 1}, such as "1.2e-6 m^-${power - 1}"; found ${quoteValue(coefficient)}`;
    context.issues.push({ code: 'custom', path: ['coefficient'], message, input: coefficient });
    return z.NEVER;
  }
  const scale = (match[2] ?? match[4]) === 'mm' ? 1000 ** (power - 1) : 1;
  const value = Number(match[1]) * scale;
  if (!Number.isFinite(value)) {
    const message = `expected a finite coefficient; found ${quoteValue(coefficient)} (the number is too large)`;
    context.issues.push({ code: 'custom', path: ['coefficient'], message, input: coefficient });
    return z.NEVER;
  }
  return { power, coefficient: value };
});

/** "flat", or a length whose sign tells concave (+) from convex (−). Output: m, Infinity for flat. */
const radiusOfCurvature = z
  .string({
    error: ({ input }) =>
      `expected a length with its unit, such as "11.96 m" (negative for convex), or "flat"; found ${quoteValue(input)}`,
  })
  .transform((text, context) => {
    if (text.trim() === 'flat') return Infinity;
    const parsed = parseQuantity(text, 'length');
    if (parsed.ok && parsed.value !== 0) return parsed.value;
    const message = parsed.ok
      ? `expected a radius that is not zero, or "flat"; found ${quoteValue(text)}`
      : `${parsed.message}; of a flat mirror, write "flat"`;
    context.issues.push({ code: 'custom', message, input: text });
    return z.NEVER;
  })
  .meta({
    description: 'radius of curvature at the vertex: positive for concave, negative for convex, or "flat"',
    examples: ['11.96 m'],
  });

export const mirrorSchema = section('a mirror', {
  radiusOfCurvature,
  conicConstant: plainNumber('conic constant K: −1 is a paraboloid, 0 a sphere', -1).default(0),
  aspheric: list('aspheric terms', asphericTerm, 0, 9).optional(),
  outerDiameter: quantity('length', 'diameter of the glass; of a hexagon, the circle through its corners', POSITIVE),
  holeDiameter: quantity('length', 'diameter of the central hole', NOT_NEGATIVE).prefault('0 m'),
  outline: choice('outline of the glass', ['round', 'hexagon']).default('round'),
  cornerAngle: quantity('angle', 'clock angle of one corner of a hexagon').prefault('0 deg'),
  clearAperture: section('a clear aperture', {
    innerDiameter: quantity('length', 'diameter of the part that need not be coated', NOT_NEGATIVE).optional(),
    outerDiameter: quantity('length', 'diameter of the part that must be coated', POSITIVE).optional(),
  })
    .optional()
    .meta({ description: 'the part over which the coat is judged; the whole face unless given' }),
  offAxisDistance: quantity(
    'length',
    "distance of the glass's centre from the parent's vertex, along +x",
    NOT_NEGATIVE,
  ).prefault('0 m'),
  thickness: quantity(
    'length',
    'edge thickness of the glass; a tenth of the outer diameter unless given',
    POSITIVE,
  ).optional(),
  facing: z
    .union(
      [
        z.enum(['down', 'up']),
        section('a facing', { sideways: quantity('angle', 'clock angle at which gravity points') }),
      ],
      { error: ({ input }) => `expected "down", "up" or { "sideways": "0 deg" }; found ${quoteValue(input)}` },
    )
    .default('down')
    .meta({ description: 'which way the reflecting face looks; fixes gravity only' }),
});

export const tankSchema = section('a tank', {
  diameter: quantity('length', 'inner diameter of the cylindrical tank', POSITIVE),
  depth: quantity('length', 'inner length of the tank along the mirror axis', POSITIVE),
  behindMirror: quantity(
    'length',
    "distance from the mirror's vertex back to the end wall behind it; just behind the glass unless given",
    POSITIVE,
  ).optional(),
});

export const witnessSchema = section('a witness', {
  name: label('name of the witness'),
  radius: quantity('length', "distance from the mirror's centre", NOT_NEGATIVE).optional(),
  angle: quantity('angle', 'clock angle').optional(),
  position: point('a position of its own').optional(),
  normal: direction('the way it faces; toward the filaments (+z) unless given').optional(),
  diameter: quantity('length', 'diameter of the coated part', POSITIVE).prefault('25 mm'),
});
