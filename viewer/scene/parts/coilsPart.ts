/** All filaments as small signs: coils for those that fire, crossed rings out of use, open rings without a charge. */
import { Group, Matrix4, Quaternion, Vector3 } from 'three';
import type { Filament, Plant } from '../../../engine/index.ts';
import type { Colors } from '../../state/useColors.ts';
import { coilGeometry, crossedGeometry, emptyGeometry } from '../coilGeometry.ts';
import { feedSignsOf, type FeedSign } from '../feedSigns.ts';
import { whenChanged } from '../whenChanged.ts';
import type { ScenePart } from './scenePart.ts';
import { createSigns, type Sign, type Signs } from './signs.ts';

/** Length of a coil on screen as a share of the tank's radius: larger than life, or it would not be seen. */
const SIGN_SHARE = 0.095;
/** The same where filaments are many: share of radius over the root of their number. */
const CROWD_SHARE = 1.4;
/** Steps around a turn of the sign; 200 coils of 40 steps, each of 5 sides, are 80 000 triangles. */
const STEPS_PER_TURN = 10;

export type FilamentState = 'fires' | 'out of use' | 'no charge';

/** What a filament does in the shot. */
export function stateOf({ outOfUse, charge }: Filament): FilamentState {
  if (outOfUse) return 'out of use';
  return charge > 0 ? 'fires' : 'no charge';
}

/** Length of a filament's sign, m. */
export function signSize({ tank, filaments }: Plant): number {
  return tank.radius * Math.min(SIGN_SHARE, CROWD_SHARE / Math.sqrt(Math.max(1, filaments.length)));
}

const ALONG = new Vector3(1, 0, 0);

function signOf({ center, coilAxis, length }: Filament, size: number, color: string): Sign {
  const turn = new Quaternion().setFromUnitVectors(ALONG, new Vector3(...coilAxis));
  const scale = Math.max(size, length);
  return { color, matrix: new Matrix4().compose(new Vector3(...center), turn, new Vector3(scale, scale, scale)) };
}

function colorOf(filament: Filament, colors: Colors, feeds: ReadonlyMap<string, FeedSign> | null): string {
  if (stateOf(filament) !== 'fires') return colors['scene-idle'];
  return feeds?.get(filament.feed ?? '')?.color ?? colors['scene-coil'];
}

export function createCoilsPart(): ScenePart {
  const object = new Group();
  object.name = 'coils';
  const swap: Parameters<typeof createSigns>[1] = (old, next) => void object.remove(old).add(next);
  const kinds: Record<FilamentState, Signs> = {
    fires: createSigns(coilGeometry(STEPS_PER_TURN), swap),
    'out of use': createSigns(crossedGeometry(), swap),
    'no charge': createSigns(emptyGeometry(), swap),
  };
  const all = Object.entries(kinds) as [FilamentState, Signs][];
  for (const [, signs] of all) object.add(signs.mesh());
  const redraw = whenChanged((plant: Plant, colors: Colors, showsFeeds: boolean) => {
    const size = signSize(plant);
    const feeds = showsFeeds ? feedSignsOf(plant) : null;
    for (const [state, signs] of all) {
      const own = plant.filaments.filter((filament) => stateOf(filament) === state);
      signs.draw(own.map((filament) => signOf(filament, size, colorOf(filament, colors, feeds))));
    }
  });
  return {
    object,
    update: ({ plant, colors, options }) => redraw(plant, colors, options.showsFeeds),
    dispose: () => {
      for (const [, signs] of all) signs.dispose();
    },
  };
}
