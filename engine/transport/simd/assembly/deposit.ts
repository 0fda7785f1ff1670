// The module's entry: every kernel in double precision (…64, two points to a vector) and in single (…32, four).

import { addThroughGas, addSide, cutByShield } from './passage';
import { addSources } from './laws';

export { RUNS, SUM, MIXES, PART, SIDE, CUT, SOURCES, SHIELD } from './layout';
export { addSumTimes } from './mix';
export { addPart } from './passage';

/** Zeroes bytes, such as a sum. */
export function clear(at: usize, bytes: usize): void {
  memory.fill(at, 0, bytes);
}

export function addSources64(out: usize, run: usize, bytes: usize, law: i32, pairs: i32, first: i32, count: i32): void {
  addSources<f64>(out, run, bytes, law, pairs, first, count);
}
export function addSources32(out: usize, run: usize, bytes: usize, law: i32, pairs: i32, first: i32, count: i32): void {
  addSources<f32>(out, run, bytes, law, pairs, first, count);
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
