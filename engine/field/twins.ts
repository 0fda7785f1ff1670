/** Filaments sorted into classes that share one column, with the charges' Fourier sums. */
import type { KeyedSource } from '../transport/transport.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import { isSameSource, turnedToZero, type Turned } from './rotation.ts';

/** Filaments whose columns are one column, turned and perhaps mirrored. */
export interface TwinClass {
  /** key of the first of them, with mass or not: that of the column */
  readonly key: string;
  readonly turned: Turned;
  /** indices of its filaments with mass in the list */
  readonly members: number[];
  /** whether it is its own mirror image in the plane through the axis */
  readonly isEven: boolean;
  /** clock angles, rad, and masses, kg, of those that are the first one turned */
  readonly angles: number[];
  readonly masses: number[];
  /** the same of those that are its mirror image turned */
  readonly mirroredAngles: number[];
  readonly mirroredMasses: number[];
}

/**
 * Sorts filaments into classes. Classes without mass are left out; a filament without mass may still
 * stand for its class, so that a failed one changes no column.
 *
 * @param masses [sources] kg
 */
export function twinClasses(
  sources: readonly KeyedSource[],
  masses: ArrayLike<number>,
  shape: MirrorShape,
): TwinClass[] {
  const classes: TwinClass[] = [];
  sources.forEach(({ key, source }, f) => {
    if (source.count > 0) joinInto(classes, key, turnedToZero(source, shape), f, masses[f]!, shape.rimRadius);
  });
  return classes.filter(({ members }) => members.length > 0);
}

/** Adds filament f to the class that it belongs to, or founds one. */
function joinInto(classes: TwinClass[], key: string, turned: Turned, f: number, mass: number, scale: number): void {
  const { source, angle } = turned;
  for (const one of classes) {
    const isTwin = isSameSource(one.turned.source, source, 1, scale);
    if (!isTwin && (one.isEven || !isSameSource(one.turned.source, source, -1, scale))) continue;
    if (mass !== 0) {
      one.members.push(f);
      (isTwin ? one.angles : one.mirroredAngles).push(angle);
      (isTwin ? one.masses : one.mirroredMasses).push(mass);
    }
    return;
  }
  const isEven = isSameSource(source, source, -1, scale);
  const own = mass === 0 ? [] : [f];
  classes.push({
    key,
    turned,
    members: own,
    isEven,
    angles: own.map(() => angle),
    masses: own.map(() => mass),
    mirroredAngles: [],
    mirroredMasses: [],
  });
}

/** Σ q cos mφ and Σ q sin mφ for m = 0 … count − 1. */
export interface ChargeSums {
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
}

/**
 * Fourier sums of charges around the axis.
 *
 *     P_m = Σ q_i cos mφ_i,   Q_m = Σ q_i sin mφ_i
 *
 * Error: the recurrence of e^{imφ} loses about m roundings.
 */
export function chargeSums(angles: readonly number[], masses: readonly number[], count: number): ChargeSums {
  const cosine = new Float64Array(count);
  const sine = new Float64Array(count);
  for (let i = 0; i < angles.length; i++) {
    const [c1, s1] = [Math.cos(angles[i]!), Math.sin(angles[i]!)];
    let [c, s] = [masses[i]!, 0];
    for (let m = 0; m < count; m++) {
      cosine[m]! += c;
      sine[m]! += s;
      const next = c * c1 - s * s1;
      s = s * c1 + c * s1;
      c = next;
    }
  }
  return { cosine, sine };
}
