/** Ready-made design files, all in invented scenarios, in the order in which the page offers them. */
import type { DesignFile } from '../engine/index.ts';
import convexSecondary from './convex-secondary.json' with { type: 'json' };
import crucibles from './crucibles-8m.json' with { type: 'json' };
import deepAndFast from './deep-fast-6m5.json' with { type: 'json' };
import flatTestPlate from './flat-test-plate.json' with { type: 'json' };
import hexagonSegment from './hexagon-segment.json' with { type: 'json' };
import spiderShadow from './spider-shadow.json' with { type: 'json' };
import asWired from './tarn-hill-as-wired.json' with { type: 'json' };
import secondRing from './tarn-hill-second-ring.json' with { type: 'json' };
import teachingTank from './teaching-tank.json' with { type: 'json' };

export interface Preset {
  /** the file's name without its ending */
  readonly id: string;
  readonly file: DesignFile;
}

/** TypeScript widens the words and triples of imported JSON, hence the cast; tests/engine/presets.test.ts opens each. */
const preset = (id: string, json: object): Preset => ({ id, file: json as DesignFile });

export const presets: readonly Preset[] = [
  preset('tarn-hill-as-wired', asWired),
  preset('tarn-hill-second-ring', secondRing),
  preset('teaching-tank', teachingTank),
  preset('flat-test-plate', flatTestPlate),
  preset('convex-secondary', convexSecondary),
  preset('crucibles-8m', crucibles),
  preset('deep-fast-6m5', deepAndFast),
  preset('spider-shadow', spiderShadow),
  preset('hexagon-segment', hexagonSegment),
];
