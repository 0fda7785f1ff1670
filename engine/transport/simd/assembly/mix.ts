// Sums of sums: what several filaments leave together.

import { addTo, held, SUM } from './layout';

/** out += factor · SUM */
export function addSumTimes(out: usize, bytes: usize, factor: f64): void {
  const times = held<f64>(factor);
  for (let o: usize = 0; o < bytes; o += 16) addTo<f64>(out + o, v128.mul<f64>(v128.load(SUM + o), times));
}
