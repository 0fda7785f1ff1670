/** The summary for other programs: SI numbers, units in the key names. */
import { verdictOf, type Coat } from '../../engine/index.ts';
import type { Extreme } from '../../engine/coat/extremes.ts';

/** Everything in the report as one JSON object. */
export function summary(coat: Coat): object {
  const { plant, statistics: s, budget } = coat;
  const { level, sentence, second } = verdictOf(coat);
  return {
    name: plant.name,
    verdict: { level, sentence, second },
    statistics: {
      mean_thickness_m: s.mean.value,
      mean_thickness_error_m: s.mean.error,
      ...extreme('minimum', s.minimum),
      ...extreme('maximum', s.maximum),
      uniformity_1: s.uniformity.value,
      uniformity_error_1: s.uniformity.error,
      rms_1: s.rms.value,
      rms_error_1: s.rms.error,
      edge_ratio_1: s.edgeRatio.value,
      edge_ratio_error_1: s.edgeRatio.error,
      collection_1: s.collection.value,
      collection_error_1: s.collection.error,
      fraction_within_tolerance_1: s.fractionInside.value,
      fraction_within_tolerance_error_1: s.fractionInside.error,
    },
    mass_budget: {
      evaporated_kg: budget.evaporated,
      items: budget.items.map(({ name, mass }) => ({ name, mass_kg: mass.value, error_kg: mass.error })),
      closure_1: budget.closure?.value ?? null,
      closure_error_1: budget.closure?.error ?? null,
    },
    witnesses: plant.witnesses.map(({ name, position }, i) => ({
      name,
      position_m: position,
      thickness_m: coat.witnessThickness[i],
    })),
    film: {
      target_m: plant.film.target,
      tolerance_1: plant.film.tolerance,
      density_kg_m3: plant.film.density,
      sticking_1: plant.film.sticking,
    },
    points: coat.face.points.count,
  };
}

function extreme(name: string, { value, error, position }: Extreme): object {
  return { [`${name}_thickness_m`]: value, [`${name}_thickness_error_m`]: error, [`${name}_position_m`]: position };
}
