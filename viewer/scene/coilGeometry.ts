/** The signs for filaments: a small coil for one that fires, a cross in a ring out of use, an open ring without a charge. */
import { BoxGeometry, CatmullRomCurve3, TorusGeometry, TubeGeometry, Vector3, type BufferGeometry } from 'three';
import { mergeGeometries } from 'three/addons/utils/BufferGeometryUtils.js';

const TURNS = 4;
const COIL_RADIUS = 0.22;
const WIRE_RADIUS = 0.045;

/** A helix along x of length 1, centred, as a smooth curve through its points. */
function helix(stepsPerTurn: number): CatmullRomCurve3 {
  const steps = TURNS * stepsPerTurn;
  return new CatmullRomCurve3(
    Array.from({ length: steps + 1 }, (_, i) => {
      const angle = (2 * Math.PI * i) / stepsPerTurn;
      return new Vector3(i / steps - 0.5, COIL_RADIUS * Math.cos(angle), COIL_RADIUS * Math.sin(angle));
    }),
  );
}

/**
 * A coil along x, one unit long.
 *
 * @param stepsPerTurn corners of the wire around a turn
 */
export function coilGeometry(stepsPerTurn: number): BufferGeometry {
  return new TubeGeometry(helix(stepsPerTurn), TURNS * stepsPerTurn, WIRE_RADIUS, 5);
}

/** A cross in a ring, across x, one unit wide: out of use. */
export function crossedGeometry(): BufferGeometry {
  const ring = emptyGeometry();
  const bars = [Math.PI / 4, -Math.PI / 4].map((angle) =>
    new BoxGeometry(1, 2 * WIRE_RADIUS, 2 * WIRE_RADIUS).rotateZ(angle),
  );
  const merged = mergeGeometries([ring, ...bars]);
  for (const part of [ring, ...bars]) part.dispose();
  return merged;
}

/** A ring, one unit wide: no charge. */
export function emptyGeometry(): BufferGeometry {
  return new TorusGeometry(0.5, WIRE_RADIUS, 4, 24);
}
