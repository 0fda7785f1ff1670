/** Names over the picture, most important first: extremes, witnesses, feed numbers. */
import type { Filament, Plant } from '../../engine/index.ts';
import type { Units } from '../state/units.ts';
import { feedSignsOf } from './feedSigns.ts';
import { signSize } from './parts/coilsPart.ts';
import { pinTop } from './parts/witnessPart.ts';
import type { Picture } from './picture.ts';
import { thicknessText } from './sceneText.ts';

export interface Label {
  readonly key: string;
  readonly kind: 'minimum' | 'maximum' | 'witness' | 'feed';
  readonly text: string;
  /** m */
  readonly position: readonly [number, number, number];
  /** of the edge, where the label belongs to something coloured */
  readonly color?: string;
}

/** Witnesses that carry their name in the picture; more would hide it. */
const MAX_NAMES = 24;
/** How far beside a coil its feed's number is, in lengths of the sign. */
const BESIDE = 0.85;

/** Just outside a filament's sign, seen from the tank's axis. */
function besideCoil(plant: Plant, { center: [x, y, z], length }: Filament): [number, number, number] {
  const r = Math.hypot(x - plant.tank.centerX, y);
  const out = BESIDE * Math.max(signSize(plant), length);
  return r > 0 ? [x + (out * (x - plant.tank.centerX)) / r, y + (out * y) / r, z] : [x + out, y, z];
}

/** The feed's number at every filament; the middle one of each feed comes first, so that it is the last to give way. */
function feedLabels(plant: Plant): Label[] {
  const signs = feedSignsOf(plant);
  const members = new Map<string, number[]>();
  plant.filaments.forEach(({ feed }, i) => {
    if (feed !== null) members.set(feed, [...(members.get(feed) ?? []), i]);
  });
  const middles = [...members.values()].map((own) => own[own.length >> 1]!);
  const isMiddle = new Set(middles);
  const all = [...middles, ...plant.filaments.flatMap(({ feed }, i) => (feed === null || isMiddle.has(i) ? [] : [i]))];
  return all.flatMap((i) => {
    const filament = plant.filaments[i];
    const sign = signs.get(filament?.feed ?? '');
    if (!filament || !sign) return [];
    const position = besideCoil(plant, filament);
    return [{ key: `feed ${i}`, kind: 'feed', text: sign.label, position, color: sign.color }];
  });
}

/** All labels but those of handles and probe. */
export function labelsOf({ plant, coat, options }: Picture, units: Units): Label[] {
  const { minimum, maximum } = coat.statistics;
  return [
    {
      key: 'minimum',
      kind: 'minimum',
      text: `thinnest ${thicknessText(minimum.value, units)}`,
      position: minimum.position,
    },
    {
      key: 'maximum',
      kind: 'maximum',
      text: `thickest ${thicknessText(maximum.value, units)}`,
      position: maximum.position,
    },
    ...plant.witnesses.slice(0, MAX_NAMES).map((witness, i): Label => {
      return { key: `witness ${i}`, kind: 'witness', text: witness.name, position: pinTop(witness, plant) };
    }),
    ...(options.showsFeeds ? feedLabels(plant) : []),
  ];
}
