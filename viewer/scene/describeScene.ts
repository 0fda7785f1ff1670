/** The 3D picture in words. */
import type { Coat } from '../../engine/index.ts';
import { metres, nm, polarPlace } from '../format/numbers.ts';
import { stateOf } from './parts/coilsPart.ts';

/** One sentence for people who do not see the picture. */
export function describeScene({ plant, statistics }: Coat): string {
  const { shape, filaments, witnesses, obstacleNames } = plant;
  const firing = filaments.filter((filament) => stateOf(filament) === 'fires').length;
  const [xLow, yLow] = statistics.minimum.position;
  const [xHigh, yHigh] = statistics.maximum.position;
  const things = [
    `${firing} of ${filaments.length} filaments fire`,
    ...(obstacleNames.length > 0 ? [`obstacles: ${obstacleNames.join(', ')}`] : []),
    ...(witnesses.length > 0 ? [`witnesses: ${witnesses.map(({ name }) => name).join(', ')}`] : []),
  ];
  return (
    `Tank cut open, with a mirror of ${metres(2 * shape.rimRadius, 2)} coloured by coat thickness, ` +
    `from ${nm(statistics.minimum.value, 1)} at ${polarPlace(xLow - shape.centerX, yLow)} ` +
    `to ${nm(statistics.maximum.value, 1)} at ${polarPlace(xHigh - shape.centerX, yHigh)}; ${things.join('; ')}.`
  );
}
