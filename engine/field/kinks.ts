/** Kinks of a column: they decide how fast its coefficients fall off in the end. */
import type { FilamentSource } from '../emission/filamentSource.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import { createOrientedPoints, type OrientedPoints } from '../geometry/orientedPoints.ts';
import { surfacePointInto } from '../geometry/mirrorShape.ts';

/** Power of a series without any kink. */
const SMOOTH = Infinity;
/** A corner in the field: terms fall as m^−2. */
const CORNER = 2;
/** c² log c, as in the open coil's law across its axis: terms fall as m^−3. */
const LOGARITHM = 3;

/** Azimuths at which the face's border is looked at: a beam that cuts off less of it leaves too little to matter. */
const BORDER_AZIMUTHS = 48;

/** Points on the outer circle and on the hole's edge (or the middle): where a source looks away first. */
export function borderPoints(shape: MirrorShape): OrientedPoints {
  const { centerX, holeRadius, rimRadius } = shape;
  const border = createOrientedPoints(2 * BORDER_AZIMUTHS);
  for (let i = 0; i < border.count; i++) {
    const r = i < BORDER_AZIMUTHS ? rimRadius : holeRadius;
    const angle = (2 * Math.PI * i) / BORDER_AZIMUTHS;
    surfacePointInto(border.position, border.normal, i, shape, centerX + r * Math.cos(angle), r * Math.sin(angle));
  }
  return border;
}

/**
 * Power with which the terms of a column fall off in the end, at most.
 *
 *     max(0, x)ⁿ, where x changes its sign on the face: m^−(n + 1)
 *
 * A measured table is straight between its angles, with corners at them; the open coil's E(1 − c²)
 * has a logarithm at c = 0; a cosine law ends where the source looks away, and all end where the
 * face does.
 *
 * @param border see borderPoints
 */
export function steepestDecay(source: FilamentSource, { count, position: p, normal: n }: OrientedPoints): number {
  const { law, position: s, axis: a } = source;
  let steepest = law.kind === 'table' ? CORNER : law.kind === 'coil' ? LOGARITHM : SMOOTH;
  const atEdgeOfBeam = law.kind === 'cosine' ? law.power + 1 : SMOOTH;
  for (let j = 0; j < 3 * source.count; j += 3) {
    for (let o = 0; o < 3 * count; o += 3) {
      const dx = p[o]! - s[j]!;
      const dy = p[o + 1]! - s[j + 1]!;
      const dz = p[o + 2]! - s[j + 2]!;
      if (dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]! >= 0) steepest = Math.min(steepest, CORNER);
      if (dx * a[j]! + dy * a[j + 1]! + dz * a[j + 2]! <= 0) steepest = Math.min(steepest, atEdgeOfBeam);
    }
  }
  return steepest;
}
