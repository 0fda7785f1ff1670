/** A measured table's first values: what a law says, so that the plant hardly changes until they are replaced. */
import { ellipticE } from '../../../engine/emission/ellipticE.ts';
import type { TypeFile } from './parts.ts';

type Emission = TypeFile['emission'];
type Table = Extract<Emission, { law: 'table' }>;

const STEP_DEG = 15;

/** Relative intensity of a law at an angle from its axis, 1 at its greatest. */
function relativeIntensity(law: Emission, angle: number): number {
  switch (law.law) {
    case 'isotropic':
      return 1;
    case 'cosine power':
      return Math.max(0, Math.cos(angle)) ** (law.power ?? 1);
    case 'straight wire':
      return Math.sin(angle);
    case 'open coil':
      return ellipticE(Math.cos(angle) ** 2) / (Math.PI / 2);
    case 'table':
      return 1;
  }
}

/** A law as a table of angles and intensities. */
export function tableOfLaw(law: Emission): Table {
  if (law.law === 'table') return law;
  const angles = Array.from({ length: 180 / STEP_DEG + 1 }, (_, i) => i * STEP_DEG);
  return {
    law: 'table',
    about: law.law === 'cosine power' ? 'toward mirror' : 'coil axis',
    angles: angles.map((angle) => `${angle} deg`),
    intensities: angles.map((angle) => Number(relativeIntensity(law, (angle * Math.PI) / 180).toFixed(4)) || 0),
  };
}
