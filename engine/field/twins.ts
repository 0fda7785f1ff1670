/** Filaments sorted into classes that share one column, with the charges' Fourier sums. */
import type { KeyedSource } from '../transport/transport.ts';
import type { MirrorShape } from '../geometry/mirrorShape.ts';
import { isSameSource, turnedToZero, type Turned } from './rotation.ts';

/** Filaments whose columns are one column, turned and perhaps mirrored. */
export interface TwinClass {
  /** key of the first of them: that of the column */
  readonly key: string;
  readonly turned: Turned;
  /** indices of its filaments in the list */
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
 * Sorts filaments into classes; those without mass are left out.
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
    const mass = masses[f]!;
    if (mass === 0 || source.count === 0) return;
    const turned = turnedToZero(source, shape);
    const joined = joinInto(classes, turned, mass, shape.rimRadius);
    if (joined) joined.members.push(f);
    else {
      const isEven = isSameSource(turned.source, turned.source, -1, shape.rimRadius);
      const own = { angles: [turned.angle], masses: [mass] };
      classes.push({ key, turned, members: [f], isEven, ...own, mirroredAngles: [], mirroredMasses: [] });
    }
  });
  return classes;
}

/** Adds a filament to the class that it belongs to, if there is one. */
function joinInto(
  classes: readonly TwinClass[],
  { source, angle }: Turned,
  mass: number,
  scale: number,
): TwinClass | undefined {
  for (const one of classes) {
    if (isSameSource(one.turned.source, source, 1, scale)) {
      one.angles.push(angle);
      one.masses.push(mass);
      return one;
    }
    if (!one.isEven && isSameSource(one.turned.source, source, -1, scale)) {
      one.mirroredAngles.push(angle);
      one.mirroredMasses.push(mass);
      return one;
    }
  }
  return undefined;
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
