/** The glow discharge of a design, and what it does to the glass. */
import type { Plant } from '../../../../engine/index.ts';
import { glowDose, type GlowDose, type GlowSettings } from '../../../../engine/vacuum/glow.ts';
import { tankSpace } from '../../../../engine/vacuum/tankSpace.ts';
import type { VacuumWords } from '../../../../engine/vacuum/words.ts';

export interface GlowCase {
  readonly settings: GlowSettings;
  readonly dose: GlowDose;
}

/** The dose of the discharge that a design describes; null if it describes none. */
export function glowCase(plant: Plant, words: VacuumWords): GlowCase | null {
  const glow = plant.vacuum.system?.glow;
  if (!glow) return null;
  const settings = { ...glow, area: glow.area ?? tankSpace(plant).faceArea };
  return { settings, dose: glowDose(settings, plant.vacuum.temperature, words) };
}
