/** Witness slides: a small square where each lies, on a pin so that it is found. */
import { Group, Matrix4, OctahedronGeometry } from 'three';
import type { Plant, Witness } from '../../../engine/index.ts';
import type { Colors } from '../../state/useColors.ts';
import { whenChanged } from '../whenChanged.ts';
import { createDynamicLine } from './dynamicLine.ts';
import type { ScenePart } from './scenePart.ts';
import { createSigns } from './signs.ts';

/** Length of a pin as a share of the tank's radius. */
const PIN_SHARE = 0.09;
/** Size of its head, the same. */
export const HEAD_SHARE = 0.014;

/** Top of a witness's pin, m. */
export function pinTop({ position, normal }: Witness, { tank }: Plant): [number, number, number] {
  const length = PIN_SHARE * tank.radius;
  return [position[0] + length * normal[0], position[1] + length * normal[1], position[2] + length * normal[2]];
}

export function createWitnessPart(): ScenePart {
  const object = new Group();
  object.name = 'witnesses';
  const pins = createDynamicLine({ isPairs: true });
  const heads = createSigns(new OctahedronGeometry(1), (old, next) => void object.remove(old).add(next));
  object.add(pins.object, heads.mesh());
  const redraw = whenChanged((plant: Plant, colors: Colors) => {
    const tops = plant.witnesses.map((witness) => pinTop(witness, plant));
    const size = HEAD_SHARE * plant.tank.radius;
    const color = colors['scene-mark'];
    pins.paint(color);
    pins.draw(plant.witnesses.flatMap(({ position }, i) => [...position, ...tops[i]!]));
    heads.draw(tops.map((top) => ({ color, matrix: new Matrix4().makeScale(size, size, size).setPosition(...top) })));
  });
  return {
    object,
    update: ({ plant, colors }) => redraw(plant, colors),
    dispose: () => {
      pins.dispose();
      heads.dispose();
    },
  };
}
