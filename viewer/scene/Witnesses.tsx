/** Witness slides: a small square where each lies, on a pin so that it is found. */
import type { Plant, Witness } from '../../engine/index.ts';
import type { Colors } from '../state/useColors.ts';
import { Polyline } from './Polyline.tsx';

/** Length of a pin as a share of the tank's radius. */
const PIN_SHARE = 0.09;

/** Top of a witness's pin, m. */
export function pinTop({ position, normal }: Witness, { tank }: Plant): [number, number, number] {
  const length = PIN_SHARE * tank.radius;
  return [position[0] + length * normal[0], position[1] + length * normal[1], position[2] + length * normal[2]];
}

export function Witnesses({ plant, colors }: { readonly plant: Plant; readonly colors: Colors }) {
  const size = 0.012 * plant.tank.radius;
  return plant.witnesses.map((witness, i) => {
    const top = pinTop(witness, plant);
    return (
      <group key={`${i} ${witness.name}`}>
        <Polyline position={Float32Array.from([...witness.position, ...top])} color={colors['scene-mark']} />
        <mesh position={top}>
          <octahedronGeometry args={[size]} />
          <meshBasicMaterial color={colors['scene-mark']} toneMapped={false} />
        </mesh>
      </group>
    );
  });
}
