/** The way from the tank to a pump: parts in a row, for each gas, from molecular to viscous flow. */
import type { PumpingDesign } from '../design/designSchema.ts';
import {
  bendLength,
  chokedSpeed,
  longTubeConductance,
  slipFactor,
  tubeTransmission,
  viscosityPath,
  viscousConductance,
} from './conductance.ts';
import { AIR, airViscosity, meanSpeedOf, MOLAR_MASSES } from './species.ts';

export type LinePart = PumpingDesign['pumps'][number]['line'][number];

/** Knudsen number at which a hole passes gas half as molecules, half as a jet: amid the intermediate range. */
const HALF_JET = 0.07;

/** A resistance that acts like a hole: entrance, step to a narrower part, baffle. */
interface Hole {
  /** m²: area over (1/transmission), or the area that the step counts as */
  readonly area: number;
  readonly diameter: number;
}

/** A resistance that acts by friction along a tube. */
interface Tube {
  readonly diameter: number;
  readonly length: number;
  /** molecular conductance over that of a long tube: ends and shortness taken into account */
  readonly shape: number;
}

/** A line, prepared for evaluation. */
export interface Line {
  readonly holes: readonly Hole[];
  readonly tubes: readonly Tube[];
  readonly viscosity: number;
  /** m/s, by species */
  readonly meanSpeeds: readonly number[];
}

const areaOf = (diameter: number): number => (Math.PI / 4) * diameter * diameter;

function tubeOf(diameter: number, length: number): Tube {
  // resistance without the entrance, 1/α − 1, against 3x/8 of a long tube
  const x = (2 * length) / diameter;
  return { diameter, length, shape: (3 * x) / 8 / (1 / tubeTransmission(x) - 1) };
}

function stepHole(before: number | undefined, diameter: number): Hole[] {
  const inverse = 1 / areaOf(diameter) - (before === undefined ? 0 : 1 / areaOf(before));
  return inverse > 0 ? [{ area: 1 / inverse, diameter }] : [];
}

function partHole(part: LinePart): Hole[] {
  if (part.part !== 'baffle' || part.transmission >= 1) return [];
  const { diameter, transmission } = part;
  return [{ area: areaOf(diameter) / (1 / transmission - 1), diameter }];
}

function partTube(part: LinePart): Tube[] {
  if (part.part === 'tube') return [tubeOf(part.diameter, part.length)];
  if (part.part !== 'bend') return [];
  const length = part.length + bendLength(part.diameter, part.angle);
  return length > 0 ? [tubeOf(part.diameter, length)] : [];
}

/**
 * Prepares a line.
 *
 * In molecular flow, resistances add up as R. Haefer's theorem says: the entrance once, each step to a
 * narrower part, and (1/α − 1) of each part; so a tube cut in two stays the tube it was within a few percent.
 *
 * @see R. Haefer, Vacuum 30 (1980) 217, from memory
 */
export function lineOf(parts: readonly LinePart[], temperature: number): Line {
  return {
    holes: parts.flatMap((part, i) => [...stepHole(parts[i - 1]?.diameter, part.diameter), ...partHole(part)]),
    tubes: parts.flatMap(partTube),
    viscosity: airViscosity(temperature),
    meanSpeeds: MOLAR_MASSES.map((molarMass) => meanSpeedOf(molarMass, temperature)),
  };
}

/**
 * Conductance of a line for one species.
 *
 * In viscous flow all species move with the air; in molecular flow each moves by itself. Holes pass a choked
 * jet at high pressure, which is the least that they can pass.
 *
 * @param pressure [Pa] mean over the line
 * @returns [m³/s], Infinity for an empty line
 */
export function lineConductance(
  { holes, tubes, viscosity, meanSpeeds }: Line,
  species: number,
  pressure: number,
): number {
  const meanSpeed = meanSpeeds[species] ?? 0;
  const airSpeed = meanSpeeds[AIR] ?? 0;
  const freePath = viscosityPath(pressure, viscosity, airSpeed);
  const jetSpeed = chokedSpeed(airSpeed);
  let resistance = 0;
  for (const { area, diameter } of holes) {
    const jet = 1 / (1 + freePath / diameter / HALF_JET);
    resistance += 1 / (area * ((1 - jet) * (meanSpeed / 4) + jet * jetSpeed));
  }
  for (const { diameter, length, shape } of tubes) {
    const molecular = shape * longTubeConductance(diameter, length, meanSpeed) * slipFactor(diameter / 2, freePath);
    resistance += 1 / (molecular + viscousConductance(diameter, length, pressure, viscosity));
  }
  return 1 / resistance;
}
