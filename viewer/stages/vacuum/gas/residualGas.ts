/** The residual gas of a design, and how far its vapour flies to the mirror. */
import type { Plant } from '../../../../engine/index.ts';
import { outlineRadius, surfacePointInto } from '../../../../engine/geometry/mirrorShape.ts';
import type { GasName, GasState, Mixture } from '../../../../engine/gas/gases.ts';
import { evaporatedMasses } from '../../../../engine/plant/plant.ts';

type VacuumOfPlant = Plant['vacuum'];

/** The gases by share of the pressure: the mixture if there is one, else the single gas. */
export function mixtureOf({ gas, mixture }: VacuumOfPlant): Mixture {
  return mixture ? Object.fromEntries(mixture.map(({ gas: name, share }) => [name, share])) : { [gas]: 1 };
}

/** The gas around the shot; at another pressure if one is given, Pa. */
export function residualGas(vacuum: VacuumOfPlant, pressure = vacuum.pressure): GasState {
  return { pressure, temperature: vacuum.temperature, mixture: mixtureOf(vacuum) };
}

const GAS_WORDS: Readonly<Record<GasName, string>> = {
  air: 'air',
  N2: 'nitrogen',
  O2: 'oxygen',
  H2O: 'water vapour',
  Ar: 'argon',
  H2: 'hydrogen',
  He: 'helium',
};

/** What a gas is called in a sentence. */
export const gasWord = (name: GasName): string => GAS_WORDS[name];

/** "air", "a mixture of nitrogen and water vapour". */
export function gasWords(vacuum: VacuumOfPlant): string {
  const names = (Object.keys(mixtureOf(vacuum)) as GasName[]).map(gasWord);
  if (names.length === 1) return names[0]!;
  return `a mixture of ${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** Places on the mirror that the throw is averaged over. */
const RINGS = 6;
const SPOKES = 12;

/**
 * Mean distance that vapour flies to the mirror, weighted by what would land there.
 *
 *     L = Σ m cosθ/r² · r / Σ m cosθ/r²
 *
 * Over loops and places of equal area. Assumes: all directions alike, no shadows; within about 10 % of the mean
 * over the emission law of a coil, which is enough for a Knudsen number.
 *
 * @returns [m] NaN if nothing evaporates toward the mirror
 */
export function meanThrow(plant: Plant): number {
  const { shape, filaments } = plant;
  const masses = evaporatedMasses(plant);
  const place = new Float64Array(3);
  const normal = new Float64Array(3);
  let [paths, weights] = [0, 0];
  for (let j = 0; j < SPOKES; j++) {
    const angle = (2 * Math.PI * (j + 0.5)) / SPOKES;
    const outer = outlineRadius(shape, angle);
    for (let i = 0; i < RINGS; i++) {
      const r = Math.sqrt(shape.holeRadius ** 2 + ((outer ** 2 - shape.holeRadius ** 2) * (i + 0.5)) / RINGS);
      surfacePointInto(place, normal, 0, shape, shape.centerX + r * Math.cos(angle), r * Math.sin(angle));
      filaments.forEach(({ source }, f) => {
        for (let k = 0; k < source.count; k++) {
          const to = [0, 1, 2].map((c) => source.position[3 * k + c]! - place[c]!);
          const r2 = to.reduce((sum, value) => sum + value * value, 0);
          const cosArriveR = to.reduce((sum, value, c) => sum + value * normal[c]!, 0);
          if (!(cosArriveR > 0) || !(r2 > 0)) continue;
          const weight = (masses[f]! * source.weight[k]! * cosArriveR) / (r2 * Math.sqrt(r2));
          weights += weight;
          paths += weight * Math.sqrt(r2);
        }
      });
    }
  }
  return paths / weights;
}
