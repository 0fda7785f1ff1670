/** A coat: the thickness everywhere on a mirror, and what follows from it. */
import type { Face } from '../geometry/face.ts';
import type { Plant } from '../plant/plant.ts';
import type { MassBudget } from './massBudget.ts';
import type { RadialProfile } from './radialProfile.ts';
import type { Statistics } from './statistics.ts';

export interface Coat {
  readonly plant: Plant;
  /** points of the map and the cells between them */
  readonly face: Face;
  /** [points] m */
  readonly thickness: Float64Array;
  readonly statistics: Statistics;
  readonly profile: RadialProfile;
  /** [witnesses] m */
  readonly witnessThickness: Float64Array;
  readonly budget: MassBudget;
  /** how steeply the vapour arrived, if asked for */
  readonly arrival: Arrival | null;
}

export interface Arrival {
  /** [points] mean angle from the normal, weighted by deposit, rad; NaN where nothing arrives */
  readonly meanAngle: Float64Array;
  /** [points] share of the deposit that arrives beyond 60°, 1; NaN where nothing arrives */
  readonly grazingShare: Float64Array;
  /** [witnesses] the same mean angle on the witnesses, rad */
  readonly witnessAngle: Float64Array;
}
