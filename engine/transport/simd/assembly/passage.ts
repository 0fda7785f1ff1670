// What happens to deposits between source and sum: shields, gas, and in single precision the way into doubles.

import { addTo, CUT, dot, givenTo, held, PART, PATHS, px, py, pz, SHIELD, SIDE, SUM } from './layout';
import { decay } from './functions';

/** Moves from SIDE to CUT what the shield removes: deposits where d · direction > cosHalfAngle · r. */
export function cutByShield<T>(run: usize, bytes: usize): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2);
  const ax = held<T>(load<f64>(SHIELD)), ay = held<T>(load<f64>(SHIELD + 8)), az = held<T>(load<f64>(SHIELD + 16));
  const cosHalfAngle = held<T>(load<f64>(SHIELD + 24));
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    const edge = v128.mul<T>(cosHalfAngle, v128.sqrt<T>(dot<T>(dx, dy, dz, dx, dy, dz)));
    const isShielded = v128.gt<T>(dot<T>(dx, dy, dz, ax, ay, az), edge);
    const side = v128.load(SIDE + o);
    v128.store(CUT + o, v128.and(side, isShielded));
    v128.store(SIDE + o, v128.andnot(side, isShielded));
  }
}

/** out += SIDE · exp(−r · perFreePath) */
export function addThroughGas<T>(out: usize, run: usize, bytes: usize, perFreePath: f64): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2), per = held<T>(perFreePath);
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    v128.store(PATHS + o, v128.mul<T>(v128.sqrt<T>(dot<T>(dx, dy, dz, dx, dy, dz)), per));
  }
  for (let o: usize = 0; o < bytes; o += 16) {
    addTo<T>(out + o, v128.mul<T>(v128.load(SIDE + o), decay<T>(v128.load(PATHS + o))));
  }
}

/** out += SIDE */
export function addSide<T>(out: usize, bytes: usize): void {
  for (let o: usize = 0; o < bytes; o += 16) addTo<T>(out + o, v128.load(SIDE + o));
}

/** Adds PART to SUM and zeroes it. */
export function addPart(bytes: usize): void {
  for (let o: usize = 0; o < bytes; o += 16) {
    const part = v128.load(PART + o);
    addTo<f64>(SUM + 2 * o, f64x2.promote_low_f32x4(part));
    addTo<f64>(SUM + 2 * o + 16, f64x2.promote_low_f32x4(i64x2.shuffle(part, part, 1, 1)));
    v128.store(PART + o, f32x4.splat(0));
  }
}
