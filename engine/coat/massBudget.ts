/** Where the evaporated aluminium ends: mirror, glass, walls, obstacles, witnesses, shields. */
import { FACE, FIRST_OBSTACLE, GLASS_BODY, REPLICATES, SHIELD, WALL } from '../transport/massRays.ts';
import type { Plant } from '../plant/plant.ts';
import type { Estimate } from './statistics.ts';

/** Half width of every error bar that comes from rays, in standard errors. */
const STANDARD_ERRORS = 4;

export interface BudgetItem {
  readonly name: string;
  /** kg */
  readonly mass: Estimate;
}

export interface MassBudget {
  /** kg */
  readonly evaporated: number;
  readonly items: readonly BudgetItem[];
  /** sum of all items over the mass evaporated, minus 1: zero within its error if the budget closes; null without rays */
  readonly closure: Estimate | null;
}

/** The budget without rays: the mirror by quadrature, and the rest wherever it may be. */
export function roughBudget(plant: Plant, masses: Float64Array, onFace: Estimate): MassBudget {
  const evaporated = masses.reduce((sum, mass) => sum + mass, 0);
  const mirror = { value: onFace.value * plant.film.sticking, error: onFace.error * plant.film.sticking };
  const elsewhere = { value: evaporated - mirror.value, error: mirror.error };
  const items = [
    { name: 'mirror', mass: mirror },
    { name: 'elsewhere', mass: elsewhere },
  ];
  return { evaporated, items, closure: null };
}

/** Mass at all places but the face: what the closure takes from rays. */
function massBesideFace(shares: readonly Float64Array[], masses: Float64Array, length: number): Estimate {
  const totals = new Float64Array(REPLICATES);
  shares.forEach((share, f) => {
    for (let i = 0; i < share.length; i++) {
      if (i % length !== FACE) totals[Math.floor(i / length)]! += masses[f]! * share[i]!;
    }
  });
  return meanOf(totals);
}

/** Mass at one place. */
function massAt(place: number, shares: readonly Float64Array[], masses: Float64Array, length: number): Estimate {
  const totals = new Float64Array(REPLICATES);
  shares.forEach((share, f) => {
    for (let k = 0; k < REPLICATES; k++) totals[k]! += masses[f]! * share[k * length + place]!;
  });
  return meanOf(totals);
}

/** Mean over the replicates, with STANDARD_ERRORS times its standard error. */
function meanOf(totals: Float64Array): Estimate {
  const mean = totals.reduce((sum, value) => sum + value, 0) / REPLICATES;
  const variance = totals.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (REPLICATES - 1);
  return { value: mean, error: STANDARD_ERRORS * Math.sqrt(variance / REPLICATES) };
}

/**
 * Draws up the budget. The mirror's share comes from quadrature over its face, all others from
 * rays, so that closing to 100 % is a check and not a definition.
 *
 * @param masses [filaments] kg evaporated
 * @param onFace mass arriving at the face by quadrature, kg
 * @param shares for each filament: see traceBudget
 * @param onWitness [witnesses] kg/m² arriving
 */
export function massBudget(
  plant: Plant,
  masses: Float64Array,
  onFace: Estimate,
  shares: readonly Float64Array[],
  onWitness: Float64Array,
): MassBudget {
  const length = FIRST_OBSTACLE + plant.obstacleNames.length;
  const evaporated = masses.reduce((sum, mass) => sum + mass, 0);
  const { sticking } = plant.film;
  const caught = plant.witnesses.map(({ area }, i) => onWitness[i]! * area);
  const witnessMass = (onGlass: boolean): number =>
    plant.witnesses.reduce((sum, witness, i) => sum + (witness.onGlass === onGlass ? caught[i]! : 0), 0);
  const at = (place: number): Estimate => massAt(place, shares, masses, length);
  const arriving: BudgetItem[] = [
    { name: 'mirror', mass: less(onFace, witnessMass(true)) },
    { name: 'edge and back of the glass', mass: at(GLASS_BODY) },
    { name: 'tank walls', mass: less(at(WALL), witnessMass(false)) },
    ...plant.obstacleNames.map((name, i) => ({ name, mass: at(FIRST_OBSTACLE + i) })),
    ...plant.witnesses.map(({ name }, i) => ({ name: `witness ${name}`, mass: { value: caught[i]!, error: 0 } })),
    ...(plant.filaments.some(({ source }) => source.shield) ? [{ name: 'shields', mass: at(SHIELD) }] : []),
  ];
  const items = arriving.map(({ name, mass }) => ({
    name,
    mass: { value: mass.value * sticking, error: mass.error * sticking },
  }));
  if (sticking < 1) items.push({ name: 'did not stick', mass: { value: evaporated * (1 - sticking), error: 0 } });
  const sum = items.reduce((all, { mass }) => all + mass.value, 0);
  const error = onFace.error + massBesideFace(shares, masses, length).error;
  return {
    evaporated,
    items,
    closure: {
      value: evaporated > 0 ? sum / evaporated - 1 : 0,
      error: evaporated > 0 ? error / evaporated + 1e-9 : 0,
    },
  };
}

function less({ value, error }: Estimate, mass: number): Estimate {
  return { value: value - mass, error };
}
