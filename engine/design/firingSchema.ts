/** The shot itself: how the charge is fired. */
import { quantity, section } from './fields.ts';

export const firingSchema = section('a firing', {
  duration: quantity('duration', 'how long the film grows, from the first vapour on the mirror to the last', {
    above: 0,
    max: 86400,
    saying: 'above zero and at most a day',
  }).prefault('60 s'),
});
