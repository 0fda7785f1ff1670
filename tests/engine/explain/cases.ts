/** Small plants that raise each of the questions an explanation answers. */
import type { CoatCase } from '../../../engine/explain/coatCase.ts';
import { createEvaluator, type Coat } from '../../../engine/index.ts';
import { plantOf, sourceList, type DesignPart, type Vector } from '../../support/plants.ts';

interface Source {
  readonly position: Vector;
  /** kg */
  readonly charge: number;
}

/** Sources on a ring that share so many grams. */
function ring(radius: number, height: number, grams: number, count = 6): Source[] {
  return Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    return { position: [radius * Math.cos(angle), radius * Math.sin(angle), height], charge: (1e-3 * grams) / count };
  });
}

const at = (x: number, height: number, grams: number): Source => ({ position: [x, 0, height], charge: 1e-3 * grams });

/** A flat mirror 2 m across under sources that send evenly. */
function design(sources: readonly Source[], target: string, tolerance: string, more: DesignPart = {}): DesignPart {
  return {
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '2 m', facing: 'up' },
    tank: { diameter: '6 m', depth: '6 m' },
    film: { target, tolerance },
    ...sourceList(sources, { law: 'isotropic' }),
    ...more,
  };
}

/** A design with its first filament out of use. */
function withIdle(part: DesignPart): DesignPart {
  const [set] = part['filaments'] as [DesignPart];
  return { ...part, filaments: [{ ...set, exceptions: [{ filament: 1, outOfUse: true }] }] };
}

const lid = { shape: 'disc', name: 'lid', center: ['0.75 m', '0 m', '0.1 m'], normal: [0, 0, 1], diameter: '0.2 m' };

/** Designs by the case that they are made to raise. */
export const CASES: Readonly<Record<CoatCase, DesignPart>> = {
  bare: design(ring(1, 1, 0), '100 nm', '10 %'),
  even: design(ring(0.9, 1.2, 10), '100 nm', '30 %'),
  'thin all over': design(ring(0.9, 1.2, 2), '100 nm', '30 %'),
  'thick all over': design(ring(0.9, 1.2, 20), '100 nm', '30 %'),
  'thin edge': design([at(0, 1, 5)], '100 nm', '10 %'),
  'thin middle': design(ring(1.2, 0.6, 10), '100 nm', '20 %'),
  'thin zone': design([at(0, 0.3, 0.3), ...ring(1.1, 0.35, 3)], '50 nm', '20 %'),
  'thin patch': design(ring(0.9, 1.2, 6), '60 nm', '30 %', { obstacles: [lid] }),
  'thin side': withIdle(design(ring(0.9, 0.8, 6), '80 nm', '20 %')),
  'thick edge': design([...ring(1.1, 0.3, 2, 36), at(0, 5, 70)], '100 nm', '20 %'),
  'thick middle': design([at(0, 0.5, 0.6), ...ring(1, 1.2, 6)], '100 nm', '40 %'),
  'thick zone': design([...ring(0.5, 0.15, 0.4, 36), at(0, 5, 80)], '100 nm', '20 %'),
  'thick patch': design([at(0.5, 0.2, 0.2), ...ring(0.9, 1.2, 8)], '100 nm', '40 %'),
};

const evaluator = createEvaluator();
const POINTS = 2000;

/** The coat of a design, on few points and without rays. */
export const coatOfDesign = async (part: DesignPart): Promise<Coat> =>
  evaluator.evaluate(plantOf(part), { points: POINTS, rays: 0 });
