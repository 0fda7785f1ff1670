/** The solid things in the tank. */
import { useEffect, useMemo } from 'react';
import { DoubleSide } from 'three';
import type { Plant } from '../../engine/index.ts';
import type { Colors } from '../state/useColors.ts';
import { meshGeometry, solidGeometry } from './solidGeometry.ts';

export function Obstacles({ plant, colors }: { readonly plant: Plant; readonly colors: Colors }) {
  const { solids, meshes } = plant;
  const geometries = useMemo(
    () => [...Array.from({ length: solids.count }, (_, i) => solidGeometry(solids, i)), ...meshes.map(meshGeometry)],
    [solids, meshes],
  );
  useEffect(
    () => () => {
      for (const geometry of geometries) geometry.dispose();
    },
    [geometries],
  );
  return geometries.map((geometry) => (
    <mesh key={geometry.uuid} geometry={geometry}>
      <meshLambertMaterial color={colors['scene-solid']} side={DoubleSide} transparent opacity={0.92} />
    </mesh>
  ));
}
