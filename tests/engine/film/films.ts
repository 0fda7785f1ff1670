/** Films and coats for tests. */
import { massOnFace, statisticsOf } from '../../../engine/coat/statistics.ts';
import type { Arrival, Coat } from '../../../engine/coat/coat.ts';
import { faceWeights } from '../../../engine/coat/faceWeights.ts';
import { roughBudget } from '../../../engine/coat/massBudget.ts';
import { radialProfile } from '../../../engine/coat/radialProfile.ts';
import { mirrorFilm, type MirrorFilm } from '../../../engine/film/mirrorFilm.ts';
import { createFace } from '../../../engine/geometry/face.ts';
import { evaporatedMasses } from '../../../engine/plant/plant.ts';
import { oneSource, plantOf, type DesignPart } from '../../support/plants.ts';

/** A mirror of 2 m in a tank, one source above it. */
export function benchDesign(film: DesignPart = {}, mirror: DesignPart = {}): DesignPart {
  return {
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '2 m', ...mirror },
    tank: { diameter: '4 m', depth: '4 m' },
    film,
    ...oneSource([0, 0, 1], { law: 'isotropic' }),
  };
}

/** The film of a design's film section. */
export const filmOf = (film: DesignPart = {}): MirrorFilm => mirrorFilm(plantOf(benchDesign(film)).film);

export interface Planted {
  readonly film?: DesignPart;
  readonly mirror?: DesignPart;
  readonly points?: number;
  readonly arrival?: (x: number, y: number) => { readonly meanAngle: number; readonly grazingShare: number };
}

/** A coat whose thickness is given, m, at each place of the mirror. */
export function plantedCoat(thicknessAt: (x: number, y: number) => number, planted: Planted = {}): Coat {
  const plant = plantOf(benchDesign(planted.film, planted.mirror));
  const face = createFace(plant.shape, planted.points ?? 4000);
  const { count, position } = face.points;
  const at = <T>(field: (x: number, y: number) => T): T[] =>
    Array.from({ length: count }, (_, i) => field(position[3 * i]!, position[3 * i + 1]!));
  const thickness = Float64Array.from(at(thicknessAt));
  const weights = faceWeights(face);
  const masses = evaporatedMasses(plant);
  const areal = thickness.map((value) => value * plant.film.density);
  const onFace = massOnFace(weights, [], areal);
  const angles = planted.arrival && at(planted.arrival);
  const arrival: Arrival | null = angles
    ? {
        meanAngle: Float64Array.from(angles, ({ meanAngle }) => meanAngle),
        grazingShare: Float64Array.from(angles, ({ grazingShare }) => grazingShare),
        witnessAngle: new Float64Array(0),
      }
    : null;
  return {
    plant,
    face,
    thickness,
    statistics: statisticsOf(face, weights, [], thickness, plant.film.tolerance, { value: 0, error: 0 }),
    profile: radialProfile(face, thickness),
    witnessThickness: new Float64Array(0),
    budget: roughBudget(plant, masses, onFace),
    arrival,
  };
}
