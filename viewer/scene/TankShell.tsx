/** The tank, cut open above the filaments: its far wall and its floor, so that the inside is seen from everywhere. */
import { useMemo } from 'react';
import { BackSide } from 'three';
import type { Plant } from '../../engine/index.ts';
import type { Colors } from '../state/useColors.ts';
import { Polyline } from './Polyline.tsx';

/** Wall left standing above the highest filament, as a share of the tank's radius. */
const MARGIN_SHARE = 0.12;

/** Height at which the wall is cut, m. */
export function cutHeight({ tank, filaments }: Plant): number {
  const highest = filaments.reduce(
    (z, { center }) => Math.max(z, center[2]),
    tank.lowZ + 0.3 * (tank.highZ - tank.lowZ),
  );
  return Math.min(tank.highZ, highest + MARGIN_SHARE * tank.radius);
}

function circle(radius: number): Float32Array {
  const corners = Array.from({ length: 129 }, (_, i) => (2 * Math.PI * i) / 128);
  return Float32Array.from(corners.flatMap((angle) => [radius * Math.cos(angle), radius * Math.sin(angle), 0]));
}

export function TankShell({ plant, colors }: { readonly plant: Plant; readonly colors: Colors }) {
  const { tank } = plant;
  const top = cutHeight(plant);
  const height = top - tank.lowZ;
  const rim = useMemo(() => circle(tank.radius), [tank.radius]);
  return (
    <group position={[tank.centerX, 0, 0]}>
      <mesh position={[0, 0, tank.lowZ + height / 2]} rotation={[Math.PI / 2, 0, 0]} renderOrder={-1}>
        <cylinderGeometry args={[tank.radius, tank.radius, height, 96, 1, true]} />
        <meshBasicMaterial color={colors['scene-wall']} side={BackSide} transparent opacity={0.55} depthWrite={false} />
      </mesh>
      <mesh position={[0, 0, tank.lowZ]} renderOrder={-2}>
        <circleGeometry args={[tank.radius, 96]} />
        <meshBasicMaterial color={colors['scene-wall']} transparent opacity={0.8} depthWrite={false} />
      </mesh>
      {[tank.lowZ, top].map((z) => (
        <group key={z} position={[0, 0, z]}>
          <Polyline position={rim} color={colors['scene-edge']} />
        </group>
      ))}
    </group>
  );
}
