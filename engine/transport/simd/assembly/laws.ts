// The emission laws in the operation order of depositKernels.ts: in double precision to the same bits,
// but for fractional powers. Each adds the deposits of the given sub-source on a run to `out`, T.

import { addTo, arriving, COS, dot, given, givenTo, held, leastSquare, px, py, pz, TAIL, turnTo } from './layout';
import { exp2, fastEllipticE, leadingBits, scaledLogInto } from './functions';

/** w · max(0, d·a) · max(0, −d·n) / r⁴ */
function addKnudsen<T>(out: usize, run: usize, bytes: usize): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2), ax = givenTo<T>(3), ay = givenTo<T>(4), az = givenTo<T>(5);
  const w = givenTo<T>(6), least = leastSquare<T>(), zero = v128.splat<T>(<T>0);
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    const cosEmitR = v128.pmax<T>(zero, dot<T>(dx, dy, dz, ax, ay, az));
    const r2 = v128.pmax<T>(least, dot<T>(dx, dy, dz, dx, dy, dz));
    addTo<T>(out + o, v128.div<T>(v128.mul<T>(v128.mul<T>(w, cosEmitR), arriving<T>(dx, dy, dz, at)), v128.mul<T>(r2, r2)));
  }
}

/** w · max(0, cosφ)ⁿ · max(0, −d·n) / r³ for n = 2·pairs + 1 */
function addOddCosine<T>(out: usize, run: usize, bytes: usize, pairs: i32): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2), ax = givenTo<T>(3), ay = givenTo<T>(4), az = givenTo<T>(5);
  const w = givenTo<T>(6), least = leastSquare<T>(), one = held<T>(1), zero = v128.splat<T>(<T>0);
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    const cosEmitR = v128.pmax<T>(zero, dot<T>(dx, dy, dz, ax, ay, az));
    const perR2 = v128.div<T>(one, v128.pmax<T>(least, dot<T>(dx, dy, dz, dx, dy, dz)));
    const cos2 = v128.mul<T>(v128.mul<T>(cosEmitR, cosEmitR), perR2);
    const both = v128.mul<T>(v128.mul<T>(w, arriving<T>(dx, dy, dz, at)), cosEmitR);
    let term = v128.mul<T>(both, v128.mul<T>(perR2, perR2));
    for (let k = 0; k < pairs; k++) term = v128.mul<T>(term, cos2);
    addTo<T>(out + o, term);
  }
}

/** w · max(0, cosφ)ⁿ · max(0, −d·n) / r³ for n = 2·pairs, 1 in front and 0 behind for n = 0 */
function addEvenCosine<T>(out: usize, run: usize, bytes: usize, pairs: i32): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2), ax = givenTo<T>(3), ay = givenTo<T>(4), az = givenTo<T>(5);
  const w = givenTo<T>(6), least = leastSquare<T>(), one = held<T>(1), zero = v128.splat<T>(<T>0);
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    const cosEmitR = dot<T>(dx, dy, dz, ax, ay, az);
    const perR2 = v128.div<T>(one, v128.pmax<T>(least, dot<T>(dx, dy, dz, dx, dy, dz)));
    const cos2 = v128.mul<T>(v128.mul<T>(cosEmitR, cosEmitR), perR2);
    const arrive = v128.mul<T>(w, arriving<T>(dx, dy, dz, at));
    let term = v128.mul<T>(arrive, v128.mul<T>(perR2, v128.sqrt<T>(perR2)));
    for (let k = 0; k < pairs; k++) term = v128.mul<T>(term, cos2);
    addTo<T>(out + o, v128.and(term, v128.gt<T>(cosEmitR, zero)));
  }
}

/** w · max(0, −d·n) / r³ */
function addIsotropic<T>(out: usize, run: usize, bytes: usize): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2), w = givenTo<T>(6), least = leastSquare<T>();
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    const r2 = v128.pmax<T>(least, dot<T>(dx, dy, dz, dx, dy, dz));
    addTo<T>(out + o, v128.div<T>(v128.mul<T>(w, arriving<T>(dx, dy, dz, at)), v128.mul<T>(r2, v128.sqrt<T>(r2))));
  }
}

/** w · |d × a| · max(0, −d·n) / r⁴ */
function addWire<T>(out: usize, run: usize, bytes: usize): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2), ax = givenTo<T>(3), ay = givenTo<T>(4), az = givenTo<T>(5);
  const w = givenTo<T>(6), least = leastSquare<T>();
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    const cx = v128.sub<T>(v128.mul<T>(dy, az), v128.mul<T>(dz, ay));
    const cy = v128.sub<T>(v128.mul<T>(dz, ax), v128.mul<T>(dx, az));
    const cz = v128.sub<T>(v128.mul<T>(dx, ay), v128.mul<T>(dy, ax));
    const r2 = v128.pmax<T>(least, dot<T>(dx, dy, dz, dx, dy, dz));
    const sinR = v128.sqrt<T>(dot<T>(cx, cy, cz, cx, cy, cz));
    addTo<T>(out + o, v128.div<T>(v128.mul<T>(v128.mul<T>(w, sinR), arriving<T>(dx, dy, dz, at)), v128.mul<T>(r2, r2)));
  }
}

/**
 * First pass of the laws whose lobe is long to compute: cosφ into COS, w · max(0, −d·n) / r³ into TAIL.
 *
 * The processor works ahead over only so many waiting operations; two short chains run in less time than one long.
 */
// @ts-ignore: decorator
@inline
function prepareLobe<T>(run: usize, bytes: usize): void {
  const sx = givenTo<T>(0), sy = givenTo<T>(1), sz = givenTo<T>(2), ax = givenTo<T>(3), ay = givenTo<T>(4), az = givenTo<T>(5);
  const w = givenTo<T>(6), least = leastSquare<T>(), one = held<T>(1);
  for (let o: usize = 0; o < bytes; o += 16) {
    const at = run + o;
    const dx = v128.sub<T>(px<T>(at), sx), dy = v128.sub<T>(py<T>(at), sy), dz = v128.sub<T>(pz<T>(at), sz);
    const perR = v128.div<T>(one, v128.sqrt<T>(v128.pmax<T>(least, dot<T>(dx, dy, dz, dx, dy, dz))));
    v128.store(COS + o, v128.mul<T>(dot<T>(dx, dy, dz, ax, ay, az), perR));
    const perR3 = v128.mul<T>(v128.mul<T>(perR, perR), perR);
    v128.store(TAIL + o, v128.mul<T>(v128.mul<T>(w, arriving<T>(dx, dy, dz, at)), perR3));
  }
}

/** w · E(sin²φ) · max(0, −d·n) / r³ */
function addCoil<T>(out: usize, run: usize, bytes: usize): void {
  prepareLobe<T>(run, bytes);
  for (let o: usize = 0; o < bytes; o += 16) {
    const c = v128.abs<T>(v128.load(COS + o));
    addTo<T>(out + o, v128.mul<T>(v128.load(TAIL + o), fastEllipticE<T>(c)));
  }
}

/** w · max(0, cosφ)ⁿ · max(0, −d·n) / r³ for any n */
function addCosinePower<T>(out: usize, run: usize, bytes: usize): void {
  prepareLobe<T>(run, bytes);
  // the leading bits of n: their product with a binary exponent is exact
  const exponent = given(7);
  const leading = held<T>(leadingBits<T>(exponent)), rest = held<T>(exponent - leadingBits<T>(exponent));
  const n = givenTo<T>(7);
  for (let o: usize = 0; o < bytes; o += 16) {
    scaledLogInto<T>(o, v128.load(COS + o), n, leading, rest);
  }
  for (let o: usize = 0; o < bytes; o += 16) {
    const lobe = v128.and(exp2<T>(o), v128.gt<T>(v128.load(COS + o), v128.splat<T>(<T>0)));
    addTo<T>(out + o, v128.mul<T>(v128.load(TAIL + o), lobe));
  }
}

/** Adds sub-sources first … first + count − 1 of SOURCES under a law, LAWS of simdKernel.ts, to `out`, one after the other. */
export function addSources<T>(out: usize, run: usize, bytes: usize, law: i32, pairs: i32, first: i32, count: i32): void {
  for (let j = first; j < first + count; j++) {
    turnTo(j);
    switch (law) {
      case 0: addIsotropic<T>(out, run, bytes); break;
      case 1: addKnudsen<T>(out, run, bytes); break;
      case 2: addOddCosine<T>(out, run, bytes, pairs); break;
      case 3: addEvenCosine<T>(out, run, bytes, pairs); break;
      case 4: addCosinePower<T>(out, run, bytes); break;
      case 5: addWire<T>(out, run, bytes); break;
      case 6: addCoil<T>(out, run, bytes); break;
    }
  }
}
