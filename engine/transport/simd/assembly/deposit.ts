// The module's entry: every kernel in double precision (…64, two points to a vector) and in single (…32, four).

import { addThroughGas, addSide, cutByShield } from './passage';
import { addCoil, addCosinePower, addEvenCosine, addIsotropic, addKnudsen, addOddCosine, addWire } from './laws';

export { RUNS, SUM, MIXES, PART, SIDE, CUT, SOURCE } from './layout';
export { addSumTimes } from './mix';
export { addPart } from './passage';

/** Zeroes bytes, such as a sum. */
export function clear(at: usize, bytes: usize): void {
  memory.fill(at, 0, bytes);
}

export function addKnudsen64(out: usize, run: usize, bytes: usize): void {
  addKnudsen<f64>(out, run, bytes);
}
export function addKnudsen32(out: usize, run: usize, bytes: usize): void {
  addKnudsen<f32>(out, run, bytes);
}
export function addOddCosine64(out: usize, run: usize, bytes: usize, pairs: i32): void {
  addOddCosine<f64>(out, run, bytes, pairs);
}
export function addOddCosine32(out: usize, run: usize, bytes: usize, pairs: i32): void {
  addOddCosine<f32>(out, run, bytes, pairs);
}
export function addEvenCosine64(out: usize, run: usize, bytes: usize, pairs: i32): void {
  addEvenCosine<f64>(out, run, bytes, pairs);
}
export function addEvenCosine32(out: usize, run: usize, bytes: usize, pairs: i32): void {
  addEvenCosine<f32>(out, run, bytes, pairs);
}
export function addCosinePower64(out: usize, run: usize, bytes: usize): void {
  addCosinePower<f64>(out, run, bytes);
}
export function addCosinePower32(out: usize, run: usize, bytes: usize): void {
  addCosinePower<f32>(out, run, bytes);
}
export function addIsotropic64(out: usize, run: usize, bytes: usize): void {
  addIsotropic<f64>(out, run, bytes);
}
export function addIsotropic32(out: usize, run: usize, bytes: usize): void {
  addIsotropic<f32>(out, run, bytes);
}
export function addWire64(out: usize, run: usize, bytes: usize): void {
  addWire<f64>(out, run, bytes);
}
export function addWire32(out: usize, run: usize, bytes: usize): void {
  addWire<f32>(out, run, bytes);
}
export function addCoil64(out: usize, run: usize, bytes: usize): void {
  addCoil<f64>(out, run, bytes);
}
export function addCoil32(out: usize, run: usize, bytes: usize): void {
  addCoil<f32>(out, run, bytes);
}
export function cutByShield64(run: usize, bytes: usize): void {
  cutByShield<f64>(run, bytes);
}
export function cutByShield32(run: usize, bytes: usize): void {
  cutByShield<f32>(run, bytes);
}
export function addThroughGas64(out: usize, run: usize, bytes: usize, perFreePath: f64): void {
  addThroughGas<f64>(out, run, bytes, perFreePath);
}
export function addThroughGas32(out: usize, run: usize, bytes: usize, perFreePath: f64): void {
  addThroughGas<f32>(out, run, bytes, perFreePath);
}
export function addSide64(out: usize, bytes: usize): void {
  addSide<f64>(out, bytes);
}
export function addSide32(out: usize, bytes: usize): void {
  addSide<f32>(out, bytes);
}
