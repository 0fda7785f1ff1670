/** Filament types, and the arrangements that place them. */
import { z } from 'zod';
import {
  choice,
  content,
  count,
  kindError,
  label,
  list,
  namedDirection,
  NOT_NEGATIVE,
  plainNumber,
  point,
  POSITIVE,
  quantity,
  section,
} from './fields.ts';
import { quoteValue } from './quantity.ts';

export const MAX_FILAMENTS = 5000;
/** Largest filament list as CSV, bytes. */
export const MAX_TABLE = 2_000_000;
const MAX_LOOPS = 200;

const aim = namedDirection('a direction, by name or as three numbers', [
  'toward mirror',
  'away from mirror',
  'inward',
  'outward',
]);

const measuredTable = section('a measured emission table', {
  law: z.literal('table'),
  about: choice('the axis that the angles are measured from', ['coil axis', 'toward mirror']).default('coil axis'),
  angles: list(
    'angles',
    quantity('angle', 'angle from the axis, rising', {
      min: 0,
      max: Math.PI * (1 + 1e-12),
      saying: 'from 0 to 180 deg',
    }),
    2,
    2000,
  ),
  intensities: list('intensities', plainNumber('intensity in any unit', 1, NOT_NEGATIVE), 2, 2000),
}).superRefine(({ angles, intensities }, context) => {
  if (angles.length !== intensities.length) {
    context.addIssue({
      code: 'custom',
      path: ['intensities'],
      message: `expected as many intensities as angles (${angles.length}); found ${intensities.length}`,
    });
  }
  const iFall = angles.findIndex((angle, i) => i > 0 && angle <= (angles[i - 1] ?? 0));
  if (iFall > 0)
    context.addIssue({
      code: 'custom',
      path: ['angles', iFall],
      message: 'expected angles that rise from one to the next',
    });
  if (!intensities.some((value) => value > 0))
    context.addIssue({ code: 'custom', path: ['intensities'], message: 'expected at least one intensity above zero' });
});

const emissionSchema = z
  .discriminatedUnion(
    'law',
    [
      section('an emission', { law: z.literal('isotropic') }),
      section('an emission', {
        law: z.literal('cosine power'),
        power: plainNumber('the power n; 1 is Knudsen’s law', 1, { min: 0, max: 200, saying: 'from 0 to 200' }).default(
          1,
        ),
        direction: aim.optional(),
        tilt: quantity('angle', "leans the emission from straight at the mirror toward the mirror's axis").optional(),
      }),
      section('an emission', { law: z.literal('straight wire') }),
      section('an emission', { law: z.literal('open coil') }),
      measuredTable,
    ],
    kindError('an emission law', 'law', ['isotropic', 'cosine power', 'straight wire', 'open coil', 'table']),
  )
  .meta({ description: 'how the vapour leaves: intensity against direction' });

const shieldSchema = section('a shield', {
  removes: choice('what the shield removes of the directions', ['half-space', 'cone']),
  direction: aim,
  halfAngle: quantity('angle', 'half angle of the cone', {
    above: 0,
    max: Math.PI,
    saying: 'from 0 to 180 deg',
  }).optional(),
}).superRefine(({ removes, halfAngle }, context) => {
  if (removes === 'cone' && halfAngle === undefined) {
    context.addIssue({
      code: 'custom',
      path: ['halfAngle'],
      message: 'expected the half angle of the cone, such as "60 deg"; found nothing',
    });
  }
  if (removes === 'half-space' && halfAngle !== undefined) {
    context.addIssue({
      code: 'custom',
      path: ['halfAngle'],
      message: 'a half-space has no half angle; remove it, or write "removes": "cone"',
    });
  }
});

export const filamentTypeSchema = section('a filament type', {
  loops: count('loops along the coil', 1, MAX_LOOPS).default(1),
  length: quantity('length', 'length of the coil along its axis', NOT_NEGATIVE).prefault('0 mm'),
  path: list(
    'corners',
    point('a corner of the wire, in the filament’s own frame: x along its axis, z away from the mirror'),
    2,
    500,
  )
    .optional()
    .meta({ description: 'a wire bent along these corners, instead of loops' }),
  wire: section('a wire', {
    diameter: quantity('length', 'diameter of one strand', POSITIVE).optional(),
    strands: count('strands twisted together', 1, 20).optional(),
  }).optional(),
  clipMass: quantity('mass', 'mass of one clip of aluminium', NOT_NEGATIVE).optional(),
  clipsPerLoop: z
    .union(
      [count('clips on every loop', 0, 100), list('clip counts', count('clips on this loop', 0, 100), 1, MAX_LOOPS)],
      {
        error: ({ input }) =>
          `expected a whole number of clips, or a list with one number for each loop; found ${quoteValue(input)}`,
      },
    )
    .default(1),
  charge: quantity('mass', 'aluminium on one filament, instead of counting clips', NOT_NEGATIVE).optional(),
  emission: emissionSchema,
  shield: shieldSchema.optional(),
});

const coilAxis = namedDirection('direction of the coil axis', ['tangential', 'radial', 'axial']);

const exceptionSchema = section('an exception', {
  filament: count('number of the filament in its set, from 1', 1, MAX_FILAMENTS),
  charge: quantity('mass', 'its own charge', NOT_NEGATIVE).optional(),
  outOfUse: z.boolean({ error: ({ input }) => `expected true or false; found ${quoteValue(input)}` }).optional(),
});

/** What every arrangement has. */
const common = {
  name: label('name of the set'),
  type: label('a name from filamentTypes'),
  charge: quantity('mass', 'aluminium on each filament of this set', NOT_NEGATIVE).optional(),
  feeds: count('feeds among which neighbouring filaments are shared out', 1, 500).optional(),
  exceptions: list('exceptions', exceptionSchema, 0, MAX_FILAMENTS)
    .optional()
    .meta({ description: 'single filaments that differ' }),
};

const ring = section('a ring', {
  arrangement: z.literal('ring'),
  ...common,
  count: count('filaments on the ring', 1, MAX_FILAMENTS),
  diameter: quantity('length', 'diameter of the ring', NOT_NEGATIVE),
  height: quantity('length', "z above the mirror's vertex"),
  startAngle: quantity('angle', 'clock angle of filament 1').prefault('0 deg'),
  axis: coilAxis.default('tangential'),
});

const line = section('a line', {
  arrangement: z.literal('line'),
  ...common,
  count: count('filaments on the line', 1, MAX_FILAMENTS),
  from: point('position of the first filament'),
  to: point('position of the last filament'),
  axis: coilAxis.optional(),
});

const grid = section('a grid', {
  arrangement: z.literal('grid'),
  ...common,
  columns: count('filaments along x', 1, MAX_FILAMENTS),
  rows: count('filaments along y', 1, MAX_FILAMENTS),
  spacing: z.tuple([quantity('length', 'along x', POSITIVE), quantity('length', 'along y', POSITIVE)], {
    error: ({ input }) => `expected two lengths, such as ["0.2 m", "0.2 m"]; found ${quoteValue(input)}`,
  }),
  center: point('middle of the grid'),
  axis: coilAxis.optional(),
});

const listed = section('a list', {
  arrangement: z.literal('list'),
  ...common,
  filaments: list(
    'filaments',
    section('a filament', {
      name: label('its name').optional(),
      position: point('where it is'),
      axis: coilAxis.optional(),
      charge: quantity('mass', 'its charge', NOT_NEGATIVE).optional(),
      feed: label('its feed').optional(),
    }),
    0,
    MAX_FILAMENTS,
  ).optional(),
  csv: content(
    'the text of a CSV table',
    MAX_TABLE,
    'the same as CSV text: a heading row, a unit row, a row for each filament',
  ).optional(),
  file: content('a file name', 400, 'name of a CSV file beside the design').optional(),
  axis: coilAxis.optional(),
});

export const filamentSetSchema = z
  .discriminatedUnion(
    'arrangement',
    [ring, line, grid, listed],
    kindError('an arrangement', 'arrangement', ['ring', 'line', 'grid', 'list']),
  )
  .meta({ description: 'a set of filaments of one type' });
