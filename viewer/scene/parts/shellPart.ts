/** The tank, cut open above the filaments: its far wall and its floor, so that the inside is seen from everywhere. */
import { BackSide, CircleGeometry, CylinderGeometry, Group, Mesh, MeshBasicMaterial } from 'three';
import type { Plant } from '../../../engine/index.ts';
import type { Colors } from '../../state/useColors.ts';
import { whenChanged } from '../whenChanged.ts';
import { createDynamicLine } from './dynamicLine.ts';
import type { ScenePart } from './scenePart.ts';

/** Wall left standing above the highest filament, as a share of the tank's radius. */
const MARGIN_SHARE = 0.12;
const AROUND = 128;

/** Height at which the wall is cut, m. */
export function cutHeight({ tank, filaments }: Plant): number {
  const highest = filaments.reduce(
    (z, { center }) => Math.max(z, center[2]),
    tank.lowZ + 0.3 * (tank.highZ - tank.lowZ),
  );
  return Math.min(tank.highZ, highest + MARGIN_SHARE * tank.radius);
}

/** A circle about the z axis of a place, closed, as corners of a line. */
export function circleAt(centerX: number, radius: number, z: number): number[] {
  return Array.from({ length: AROUND + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / AROUND;
    return [centerX + radius * Math.cos(angle), radius * Math.sin(angle), z];
  }).flat();
}

export function createShellPart(): ScenePart {
  const look = { transparent: true, depthWrite: false, toneMapped: false };
  const wall = new Mesh(
    new CylinderGeometry(1, 1, 1, 96, 1, true).rotateX(Math.PI / 2),
    new MeshBasicMaterial({ ...look, side: BackSide, opacity: 0.55 }),
  );
  wall.renderOrder = -1;
  const floor = new Mesh(new CircleGeometry(1, 96), new MeshBasicMaterial({ ...look, opacity: 0.8 }));
  floor.renderOrder = -2;
  wall.name = 'tank wall';
  floor.name = 'tank floor';
  const rims = [createDynamicLine(), createDynamicLine()];
  const object = new Group().add(wall, floor, ...rims.map((rim) => rim.object));
  object.name = 'tank';
  const redraw = whenChanged((plant: Plant, colors: Colors) => {
    const { tank } = plant;
    const top = cutHeight(plant);
    wall.position.set(tank.centerX, 0, (tank.lowZ + top) / 2);
    wall.scale.set(tank.radius, tank.radius, top - tank.lowZ);
    floor.position.set(tank.centerX, 0, tank.lowZ);
    floor.scale.set(tank.radius, tank.radius, 1);
    wall.material.color.set(colors['scene-wall']);
    floor.material.color.set(colors['scene-wall']);
    rims.forEach((rim, i) => {
      rim.draw(circleAt(tank.centerX, tank.radius, i === 0 ? tank.lowZ : top));
      rim.paint(colors['scene-edge']);
    });
  });
  return {
    object,
    update: ({ plant, colors }) => redraw(plant, colors),
    dispose: () => {
      for (const mesh of [wall, floor]) {
        mesh.geometry.dispose();
        mesh.material.dispose();
      }
      for (const rim of rims) rim.dispose();
    },
  };
}
