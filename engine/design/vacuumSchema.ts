/** The vacuum around the shot: residual gas, and the system that pumps the tank down. */
import { choice, list, quantity, section } from './fields.ts';
import { pumpingSchema } from './pumpingSchema.ts';

/** Gases that a residual gas is made of. */
export const GAS_NAMES = ['air', 'N2', 'O2', 'H2O', 'Ar', 'H2', 'He'] as const;
export type GasName = (typeof GAS_NAMES)[number];

/** How far the shares of a mixture may miss 100 %: shares are written with a digit or two. */
const MIXTURE_SLACK = 0.01;

const mixtureSchema = list(
  'gases with their shares',
  section('a gas with its share', {
    gas: choice('one gas of the mixture', GAS_NAMES),
    share: quantity('fraction', 'its share of the pressure', {
      above: 0,
      max: 1,
      saying: 'above 0 % and at most 100 %',
    }),
  }),
  1,
  GAS_NAMES.length,
).superRefine((mixture, context) => {
  const complain = (path: (string | number)[], message: string): void =>
    context.addIssue({ code: 'custom', path, message });
  mixture.forEach(({ gas }, i) => {
    const first = mixture.findIndex((other) => other.gas === gas);
    if (first < i) complain([i, 'gas'], `expected each gas once; "${gas}" stands in [${first}] already`);
  });
  const sum = mixture.reduce((total, { share }) => total + share, 0);
  if (Math.abs(sum - 1) > MIXTURE_SLACK)
    complain([], `expected shares that add up to 100 %; found ${Number((100 * sum).toPrecision(4))} %`);
});

export const vacuumSchema = section('a vacuum', {
  pressure: quantity('pressure', 'residual pressure during the shot', {
    above: 0,
    max: 101325 * 1.1,
    saying: 'above zero and at most atmospheric',
  }).prefault('1e-5 mbar'),
  gas: choice('the residual gas', GAS_NAMES).default('air'),
  mixture: mixtureSchema
    .optional()
    .meta({ description: 'the residual gas as a mixture, by share of the pressure; when given, it replaces "gas"' }),
  temperature: quantity('temperature', 'temperature of the gas', {
    above: 0,
    max: 2000,
    saying: 'above absolute zero and below 2000 K',
  }).prefault('20 degC'),
  system: pumpingSchema
    .optional()
    .meta({ description: 'pumps, surfaces, leak and venting, from which the pump-down is worked out' }),
});
