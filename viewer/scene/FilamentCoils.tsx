/** All filaments as small signs: coils for those that fire, crossed rings for those that do not. */
import { useEffect, useMemo } from 'react';
import { InstancedMesh, Matrix4, MeshLambertMaterial, Quaternion, Vector3, type BufferGeometry } from 'three';
import type { Filament, Plant } from '../../engine/index.ts';
import type { Colors } from '../state/useColors.ts';
import { coilGeometry, idleGeometry } from './coilGeometry.ts';

/** Length of a coil on screen as a share of the tank's radius: larger than life, or it would not be seen. */
const SIGN_SHARE = 0.095;
/** The same where filaments are many: share of radius over the root of their number. */
const CROWD_SHARE = 1.4;
const MANY = 300;

export function isFiring({ outOfUse, charge }: Filament): boolean {
  return !outOfUse && charge > 0;
}

function signSize({ tank, filaments }: Plant): number {
  return tank.radius * Math.min(SIGN_SHARE, CROWD_SHARE / Math.sqrt(filaments.length));
}

function signs(geometry: BufferGeometry, color: string, filaments: readonly Filament[], size: number): InstancedMesh {
  const mesh = new InstancedMesh(geometry, new MeshLambertMaterial({ color }), filaments.length);
  const turn = new Quaternion();
  const matrix = new Matrix4();
  filaments.forEach(({ center, coilAxis, length }, i) => {
    turn.setFromUnitVectors(new Vector3(1, 0, 0), new Vector3(...coilAxis));
    const scale = Math.max(size, length);
    mesh.setMatrixAt(i, matrix.compose(new Vector3(...center), turn, new Vector3(scale, scale, scale)));
  });
  return mesh;
}

export function FilamentCoils({ plant, colors }: { readonly plant: Plant; readonly colors: Colors }) {
  const meshes = useMemo(() => {
    const size = signSize(plant);
    const firing = plant.filaments.filter(isFiring);
    const idle = plant.filaments.filter((filament) => !isFiring(filament));
    return [
      signs(coilGeometry(firing.length > MANY ? 6 : 12), colors['scene-coil'], firing, size),
      signs(idleGeometry(), colors['scene-idle'], idle, size),
    ];
  }, [plant, colors]);
  useEffect(
    () => () => {
      for (const { geometry, material } of meshes) {
        geometry.dispose();
        (material as MeshLambertMaterial).dispose();
      }
    },
    [meshes],
  );
  return meshes.map((mesh) => <primitive key={mesh.uuid} object={mesh} />);
}
