/** A uniform disc of cosine sources, made of dense rings, against the configuration factor of an element and a disc. */
import { expect, test } from 'vitest';
import { kilograms, metres, plantOf, planeReceivers, relativeError, unshadowedDeposit } from '../support/plants.ts';
import { gaussLegendre } from '../support/quadrature.ts';

/** Filaments a ring: the trapezoid error e^(−N acosh(A/B)) is below 1e-16 for the tightest ring here (A/B = 1.25). */
const AROUND = 60;
/** Rings, at Gauss–Legendre places in r²: the integrand is analytic, 20 of them leave less than 1e-12. */
const RINGS = 20;
/** Half a unit of the table's eighth decimal. */
const DIGIT = 0.5e-8 * (1 + 1e-6);
/** 1200 terms summed. */
const ROUNDING = 1e-12;

/** Deposit per kilogram at h = 1 under a disc source of radius R. */
function underDisc(radius: number, rhos: readonly number[]): Float64Array {
  const { nodes, weights } = gaussLegendre(RINGS, 0, 1);
  const plant = plantOf({
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '1 m' },
    tank: { diameter: '10 m', depth: '10 m' },
    filamentTypes: { small: { emission: { law: 'cosine power' } } },
    filaments: nodes.map((share, i) => ({
      arrangement: 'ring',
      name: `ring ${i}`,
      type: 'small',
      count: AROUND,
      diameter: metres(2 * radius * Math.sqrt(share)),
      height: '1 m',
      charge: kilograms(weights[i]! / AROUND),
    })),
  });
  return unshadowedDeposit(plant, planeReceivers(rhos.map((rho) => [rho, 0])));
}

const RHOS = [0, 0.5, 1, 1.5];

test.each([
  // double quadrature agrees to 8 digits; form: J. R. Howell, A Catalog of Radiation Heat Transfer Configuration
  // Factors, element to parallel disc (reference seen)
  [0.5, [0.2, 0.14644661, 0.06587843, 0.02565835]],
  [1, [0.5, 0.43798263, 0.2763932, 0.12629534]],
])('a disc source of radius %d h gives the tabled configuration factors', (radius, factors) => {
  const deposit = underDisc(radius, RHOS);
  factors.forEach((factor, i) => {
    // t = (m/(πR²ρ))·F
    expect(Math.abs(deposit[i]! * Math.PI * radius ** 2 - factor)).toBeLessThanOrEqual(DIGIT);
    const rho2 = RHOS[i]! ** 2;
    const exact =
      (1 - (1 + rho2 - radius ** 2) / Math.sqrt((1 + rho2 + radius ** 2) ** 2 - 4 * rho2 * radius ** 2)) / 2;
    expect(relativeError(deposit[i]! * Math.PI * radius ** 2, exact)).toBeLessThan(ROUNDING);
  });
});
