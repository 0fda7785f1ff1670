/** The materials by the words of the design file. */
import type { Design } from '../../design/designSchema.ts';
import { CROWN_GLASS, GLASS_CERAMIC, MAGNESIUM_FLUORIDE, SILICA } from './clearMaterials.ts';
import type { Material } from './indexTable.ts';
import { SILICON_MONOXIDE } from './siliconMonoxide.ts';

type FilmDesign = Design['film'];

export const SUBSTRATE_MATERIALS: Readonly<Record<FilmDesign['substrate'], Material>> = {
  'fused silica': SILICA,
  'borosilicate crown glass': CROWN_GLASS,
  'glass ceramic': GLASS_CERAMIC,
};

export const OVERCOAT_MATERIALS: Readonly<Record<NonNullable<FilmDesign['overcoat']>['material'], Material>> = {
  SiO: SILICON_MONOXIDE,
  SiO2: SILICA,
  MgF2: MAGNESIUM_FLUORIDE,
};
