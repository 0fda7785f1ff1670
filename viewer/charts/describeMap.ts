/** A map in words, for those who do not see it. */
import type { Coat } from '../../engine/index.ts';
import { shownValue, type MapSubject } from '../../workers/picture/mapSubject.ts';
import { extentOf } from '../../workers/picture/valueScale.ts';
import { tolerance } from '../format/numbers.ts';
import { shownPlace } from './shownUnits.ts';

export function describeMap({ plant, statistics }: Coat, subject: MapSubject, decimals: number): string {
  const [low, high] = extentOf(subject.values);
  const place = ([x, y]: readonly [number, number, number]): string =>
    shownPlace(x - plant.shape.centerX, y, subject.lengthUnit);
  const value = (number: number): string => shownValue(subject, number, decimals);
  const range = Number.isNaN(low)
    ? 'Nothing arrives on the glass.'
    : `${subject.label} from ${value(low)} to ${value(high)}${subject.unit.unit === '°' ? '' : ' '}${subject.unit.unit} over the glass.`;
  const extremes =
    statistics.maximum.value > 0
      ? ` The coat is thinnest at ${place(statistics.minimum.position)} and thickest at ${place(statistics.maximum.position)}.`
      : '';
  const limits =
    subject.keyLevels.length > 0
      ? ` Lines mark the mean ${tolerance(plant.film.tolerance)}: full below, dashed above.`
      : '';
  return `Map of ${plant.name}, face on. ${range}${extremes}${limits}`;
}
