/** The pumping system: pumps with their lines, what gives off gas, how the tank was vented, the glow discharge. */
import { z } from 'zod';
import {
  choice,
  count,
  kindError,
  label,
  list,
  NOT_NEGATIVE,
  plainNumber,
  POSITIVE,
  quantity,
  section,
  type Limits,
} from './fields.ts';

/** Kinds of pump whose behaviour is built in. */
export const PUMP_KINDS = ['rotary', 'roots', 'diffusion', 'turbo', 'cryo'] as const;
export type PumpKindName = (typeof PUMP_KINDS)[number];

/** Materials whose outgassing is built in. */
export const OUTGASSING_MATERIALS = [
  'stainless steel',
  'electropolished steel',
  'mild steel',
  'rusty steel',
  'aluminium',
  'old coating',
  'glass',
  'fluoroelastomer',
  'neoprene',
] as const;
export type OutgassingMaterial = (typeof OUTGASSING_MATERIALS)[number];

/** Pa; a valve that opens at this or above is open from the start. */
const ATMOSPHERE = 1e5;
const BELOW_ATMOSPHERE: Limits = {
  above: 0,
  max: 1.1 * 101325,
  saying: 'above zero and at most atmospheric',
};
const ONE_SHARE: Limits = { above: 0, max: 1, saying: 'above 0 % and at most 100 %' };

const PART = 'what kind of part it is';
const bore = quantity('length', 'inner diameter', POSITIVE);

const lineSchema = z
  .discriminatedUnion(
    'part',
    [
      section('an aperture', { part: z.literal('aperture').meta({ description: PART }), diameter: bore }),
      section('a tube', {
        part: z.literal('tube').meta({ description: PART }),
        diameter: bore,
        length: quantity('length', 'length of the tube', POSITIVE),
      }),
      section('a bend', {
        part: z.literal('bend').meta({ description: PART }),
        diameter: bore,
        length: quantity('length', 'length along its axis; none unless given', NOT_NEGATIVE).prefault('0 m'),
        angle: quantity('angle', 'by which it turns', {
          min: 0,
          max: Math.PI,
          saying: 'from 0 to 180 deg',
        }).prefault('90 deg'),
      }),
      section('a baffle', {
        part: z.literal('baffle').meta({ description: PART }),
        diameter: bore,
        transmission: quantity('fraction', 'share of the molecules that enter it and come through', ONE_SHARE).prefault(
          '40 %',
        ),
      }),
    ],
    kindError('a part of a line', 'part', ['aperture', 'tube', 'bend', 'baffle']),
  )
  .meta({ description: 'one part of the way from the tank to the pump' });

const speedPoint = z.tuple(
  [
    quantity('pressure', 'inlet pressure', BELOW_ATMOSPHERE),
    quantity('volumeFlow', 'speed at this pressure', NOT_NEGATIVE),
  ],
  { error: () => 'expected an inlet pressure and a speed, such as ["1e-3 mbar", "31000 l/s"]' },
);

const curveSchema = list('pairs of inlet pressure and speed', speedPoint, 2, 60).superRefine((curve, context) => {
  curve.forEach(([pressure], i) => {
    const before = curve[i - 1];
    if (before && pressure <= before[0])
      context.addIssue({ code: 'custom', path: [i, 0], message: 'expected inlet pressures in rising order' });
  });
  if (curve.every(([, speed]) => speed === 0))
    context.addIssue({ code: 'custom', path: [], message: 'expected a speed above zero at some pressure' });
});

const pumpSchema = section('a pump', {
  name: label('name of the pump'),
  kind: choice('how it works; sets its speed curve, its limits and its valve unless they are given', PUMP_KINDS),
  speed: quantity('volumeFlow', 'rated speed for air, at its inlet', POSITIVE),
  count: count('how many of them stand side by side, each with such a line', 1, 100).default(1),
  waterSpeed: quantity(
    'volumeFlow',
    'speed for water vapour, of one pump; by its kind unless given',
    POSITIVE,
  ).optional(),
  curve: curveSchema.optional().meta({
    description: 'speed for air against inlet pressure; by its kind, scaled to the rated speed, unless given',
  }),
  ultimate: quantity(
    'pressure',
    'lowest pressure it reaches with nothing to pump; by its kind unless given',
    BELOW_ATMOSPHERE,
  ).optional(),
  line: list('parts of a line', lineSchema, 0, 40)
    .default([])
    .meta({ description: 'what the gas passes from the tank to the pump, in order; nothing unless given' }),
  from: quantity(
    'pressure',
    'its valve opens when the tank has come down to this; by its kind unless given',
    BELOW_ATMOSPHERE,
  ).optional(),
  until: quantity(
    'pressure',
    'its valve closes when the tank has come down to this; at the crossover, for pumps that rough the tank, unless given',
    BELOW_ATMOSPHERE,
  ).optional(),
}).superRefine(({ from, until }, context) => {
  if (from !== undefined && until !== undefined && until >= from)
    context.addIssue({
      code: 'custom',
      path: ['until'],
      message: 'expected a pressure below that of "from": the valve would close before it opens',
    });
});

const surfaceSchema = section('a surface', {
  name: label('name of the surface; its material unless given').optional(),
  material: choice('what it is made of', OUTGASSING_MATERIALS),
  area: quantity(
    'area',
    "area that faces the vacuum; the tank's inner wall, for one surface, unless given",
    POSITIVE,
  ).optional(),
  rate: quantity(
    'arealOutgassing',
    'its own outgassing rate after one hour of pumping, instead of that of the material',
    POSITIVE,
  ).optional(),
  exponent: plainNumber('how fast that rate falls: with the time to the power of minus this', 1, {
    min: 0,
    max: 4,
    saying: 'from 0 to 4',
  }).optional(),
}).superRefine(({ rate, exponent }, context) => {
  if (exponent !== undefined && rate === undefined)
    context.addIssue({
      code: 'custom',
      path: ['exponent'],
      message: 'expected a "rate" beside it: the built-in rates have a time law of their own',
    });
});

const ventingSchema = section('a venting', {
  open: quantity('duration', 'how long the tank stood open', {
    min: 0,
    max: 366 * 86400,
    saying: 'from zero to a year',
  }).prefault('24 h'),
  air: choice('what it stood full of: room air, or dry air or nitrogen', ['humid', 'dry']).default('humid'),
});

const coldTrapSchema = section('a cold trap', {
  area: quantity('area', 'cold area that faces the tank', POSITIVE).optional(),
  waterSpeed: quantity('volumeFlow', 'its speed for water vapour, instead of the area', POSITIVE).optional(),
  from: quantity(
    'pressure',
    'it is cold from this tank pressure down; from the crossover unless given',
    BELOW_ATMOSPHERE,
  ).optional(),
}).superRefine(({ area, waterSpeed }, context) => {
  if ((area === undefined) === (waterSpeed === undefined))
    context.addIssue({
      code: 'custom',
      path: [],
      message: `expected one of "area" or "waterSpeed"; found ${area === undefined ? 'none' : 'both'}`,
    });
});

const glowSchema = section('a glow discharge', {
  pressure: quantity('pressure', 'pressure at which it burns', {
    above: 0,
    max: 1000,
    saying: 'above zero and at most 10 mbar',
  }).prefault('5e-2 mbar'),
  gas: choice('the gas that is let in for it', ['air', 'O2', 'Ar']).default('air'),
  voltage: quantity('voltage', 'between the electrode and the tank', {
    above: 0,
    max: 50e3,
    saying: 'above zero and at most 50 kV',
  }).prefault('2 kV'),
  current: quantity('current', 'of the discharge', {
    above: 0,
    max: 1000,
    saying: 'above zero and at most 1 kA',
  }).prefault('200 mA'),
  area: quantity('area', 'that the discharge covers; the face of the mirror unless given', POSITIVE).optional(),
  clearance: quantity(
    'length',
    'from the electrode to what is nearest it; not judged unless given',
    POSITIVE,
  ).optional(),
  duration: quantity('duration', 'how long it burns', {
    above: 0,
    max: 86400,
    saying: 'above zero and at most a day',
  }).prefault('15 min'),
});

const pumps = list('pumps', pumpSchema, 1, 40).superRefine((all, context) => {
  const complain = (path: (string | number)[], message: string): void =>
    context.addIssue({ code: 'custom', path, message });
  if (!all.some(({ kind, from }) => (from === undefined ? kind === 'rotary' : from >= ATMOSPHERE)))
    complain([], 'expected a pump that starts at atmospheric pressure, such as a rotary pump');
  all.forEach(({ name, kind }, i) => {
    const first = all.findIndex((other) => other.name === name);
    if (first < i) complain([i, 'name'], `the name "${name}" is taken by [${first}]; each pump needs its own`);
    if (kind === 'roots' && !all.some((other) => other.kind === 'rotary'))
      complain([i, 'kind'], 'expected a rotary pump beside a Roots pump, to back it');
  });
});

const surfaces = list('surfaces', surfaceSchema, 0, 100).superRefine((all, context) => {
  const first = all.findIndex(({ area }) => area === undefined);
  all.forEach(({ area }, i) => {
    if (area === undefined && i > first)
      context.addIssue({
        code: 'custom',
        path: [i, 'area'],
        message: `expected an area: surface [${first}] stands for the tank's inner wall already`,
      });
  });
});

export const pumpingSchema = section('a pumping system', {
  volume: quantity('volume', 'free volume of the tank; from its geometry unless given', POSITIVE).optional(),
  wallArea: quantity('area', 'inner surface of the tank; from its geometry unless given', POSITIVE).optional(),
  pumps: pumps.meta({ description: 'pumps, each with its line to the tank and its valve' }),
  surfaces: surfaces
    .prefault([{ material: 'stainless steel' }])
    .meta({ description: "what gives off gas; the tank's wall of stainless steel unless given" }),
  leak: quantity('throughput', 'air that leaks in from outside', NOT_NEGATIVE).prefault('0 mbar l/s'),
  venting: ventingSchema
    .optional()
    .meta({ description: 'how the tank stood open before; a day in room air, as for published rates, unless given' }),
  coldTrap: coldTrapSchema.optional().meta({ description: 'a cold surface in the tank that takes water vapour' }),
  crossover: quantity(
    'pressure',
    'tank pressure at which roughing ends and the high-vacuum pumps are opened',
    BELOW_ATMOSPHERE,
  ).prefault('0.1 mbar'),
  glow: glowSchema.optional().meta({
    description: 'the glow discharge that cleans the glass before the high-vacuum pumps open; none unless given',
  }),
});
