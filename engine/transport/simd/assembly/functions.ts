// Functions that SIMD lacks: E by the rational function of engine/emission/ellipticE.ts, to the same bits in
// double precision; exp and powers by polynomials interpolated at Chebyshev nodes with 50 digits.

import { entry, EXACT, SMALL } from './layout';

/** Numerator from the constant term up, then the denominator's. */
const ELLIPTIC_64 = memory.data<f64>([
  0.9999999653466566, 222.292759548833, 6995.713993880915, 48141.721024448416, 95039.59324411133, 86603.26932349945,
  36032.75174053072, 1.0, 222.29229244687025, 6991.924787351864, 47563.33043568358, 82704.17595701138,
  36337.61649276337,
]);
const ELLIPTIC_32 = memory.data<f32>([
  0.9999999653466566, 222.292759548833, 6995.713993880915, 48141.721024448416, 95039.59324411133, 86603.26932349945,
  36032.75174053072, 1.0, 222.29229244687025, 6991.924787351864, 47563.33043568358, 82704.17595701138,
  36337.61649276337,
]);

/** One step of Horner's rule: entry k of a table plus x times what is inside. */
// @ts-ignore: decorator
@inline
function step<T>(table: usize, k: usize, x: v128, inside: v128): v128 {
  return v128.add<T>(entry<T>(table, k), v128.mul<T>(x, inside));
}

/** Entries k and k + 1 of a table as a straight line in x. */
// @ts-ignore: decorator
@inline
function pair<T>(table: usize, k: usize, x: v128): v128 {
  return step<T>(table, k, x, entry<T>(table, k + 1));
}

/** E(1 − c²) */
// @ts-ignore: decorator
@inline
export function fastEllipticE<T>(c: v128): v128 {
  const t = sizeof<T>() == 8 ? ELLIPTIC_64 : ELLIPTIC_32;
  const p = step<T>(t, 0, c, step<T>(t, 1, c, step<T>(t, 2, c, step<T>(t, 3, c, step<T>(t, 4, c, step<T>(t, 5, c, entry<T>(t, 6)))))));
  const q = step<T>(t, 7, c, step<T>(t, 8, c, step<T>(t, 9, c, step<T>(t, 10, c, step<T>(t, 11, c, entry<T>(t, 12))))));
  return v128.div<T>(p, q);
}

/** (eˣ − 1 − x)/x² on |x| ≤ ½ ln 2, from the constant term up; error in eˣ 1.7e-17 and 1.1e-8. */
const EXP_64 = memory.data<f64>([
  0.5000000000000001, 0.16666666666666669, 0.04166666666662399, 0.008333333333330051, 0.0013888888917281794,
  0.00019841269863105968, 2.480152119021773e-5, 2.7557268378684192e-6, 2.7620138719733994e-7, 2.5100424157005067e-8,
]);
const EXP_32 = memory.data<f32>([
  0.5, 0.16666576266288757, 0.041666556149721146, 0.008363203145563602, 0.0013926213141530752,
]);

/** log₂((1+s)/(1−s))/s in z = s² on the mantissa's range, from the constant term up; error 1.5e-17 and 1.4e-8. */
const LOG_64 = memory.data<f64>([
  2.8853900817779268, 0.9617966939259898, 0.5770780163454895, 0.41219858584787455, 0.32059853416893563,
  0.2623343930169728, 0.2209119995397776, 0.21367029765733125,
]);
const LOG_32 = memory.data<f32>([2.885390043258667, 0.9617988467216492, 0.576714813709259, 0.431727796792984]);

/**
 * Constants of exp and power: 1; a number whose last bits count whole numbers, so that adding it to a whole float
 * leaves that in its bits; the same and the offset of the exponent; the least exponent of a normal result plus 1;
 * log₂ e; ln 2 in two parts, of which k times the first is exact; ln 2.
 */
const USED_64 = memory.data<f64>([
  1, 6755399441055744, 6755399441056768, -1021, 1.4426950408889634, 6.93147180369123816490e-1,
  1.90821492927058770002e-10, 0.6931471805599453,
]);
const USED_32 = memory.data<f32>([
  1, 12582912, 12583040, -125, 1.4426950408889634, 0.693359375, -2.12194440e-4, 0.6931471805599453,
]);
const ONE: usize = 0, COUNTER: usize = 1, OFFSET_COUNTER: usize = 2, LEAST_EXPONENT: usize = 3, LOG2_E: usize = 4;
const LN2_HIGH: usize = 5, LN2_LOW: usize = 6, LN2: usize = 7;

// @ts-ignore: decorator
@inline
function used<T>(k: usize): v128 {
  return entry<T>(sizeof<T>() == 8 ? USED_64 : USED_32, k);
}

// @ts-ignore: decorator
@inline
function addWhole<T>(a: v128, b: v128): v128 {
  return sizeof<T>() == 8 ? i64x2.add(a, b) : i32x4.add(a, b);
}

/** 2ᵏ · eˣ for whole k and |x| ≤ ½ ln 2; zero where that is below the normal numbers. */
// @ts-ignore: decorator
@inline
function scaledExp<T>(k: v128, x: v128): v128 {
  const t = sizeof<T>() == 8 ? EXP_64 : EXP_32;
  const x2 = v128.mul<T>(x, x);
  // pairs, and pairs of pairs: half as long a chain as Horner's rule
  let tail = pair<T>(t, 0, x);
  if (sizeof<T>() == 8) {
    const x4 = v128.mul<T>(x2, x2);
    const low = v128.add<T>(tail, v128.mul<T>(x2, pair<T>(t, 2, x)));
    const middle = v128.add<T>(pair<T>(t, 4, x), v128.mul<T>(x2, pair<T>(t, 6, x)));
    tail = v128.add<T>(low, v128.mul<T>(x4, v128.add<T>(middle, v128.mul<T>(x4, pair<T>(t, 8, x)))));
  } else {
    const high = v128.add<T>(pair<T>(t, 2, x), v128.mul<T>(x2, entry<T>(t, 4)));
    tail = v128.add<T>(tail, v128.mul<T>(x2, high));
  }
  const e = v128.add<T>(used<T>(ONE), v128.add<T>(x, v128.mul<T>(x2, tail)));
  const whole = v128.add<T>(k, used<T>(COUNTER));
  const exponent = sizeof<T>() == 8 ? i64x2.shl(whole, 52) : i32x4.shl(whole, 23);
  return v128.and(addWhole<T>(e, exponent), v128.ge<T>(k, used<T>(LEAST_EXPONENT)));
}

/** e⁻ᵘ for u ≥ 0 */
// @ts-ignore: decorator
@inline
export function decay<T>(u: v128): v128 {
  const x = v128.neg<T>(u);
  const k = v128.nearest<T>(v128.mul<T>(x, used<T>(LOG2_E)));
  return scaledExp<T>(k, v128.sub<T>(v128.sub<T>(x, v128.mul<T>(k, used<T>(LN2_HIGH))), v128.mul<T>(k, used<T>(LN2_LOW))));
}

/** n to 24 bits for double precision, to 12 for single: times a binary exponent of T it is exact. */
// @ts-ignore: decorator
@inline
export function leadingBits<T>(n: f64): f64 {
  const rounded = <f32>n;
  return sizeof<T>() == 8 ? <f64>rounded : <f64>reinterpret<f32>(reinterpret<u32>(rounded) & 0xfffff000);
}

/**
 * n log₂ x for x > 0, in two parts: into EXACT what is not rounded, into SMALL the rest. Anything for other x.
 *
 * With x = m · 2ᵉ, m from √½ to √2: n log₂ x = n·e + n·log₂ m. The first term is large; n's leading bits times e
 * are exact, so that only the second, at most n/2, is rounded.
 */
// @ts-ignore: decorator
@inline
export function scaledLogInto<T>(o: usize, x: v128, n: v128, leading: v128, rest: v128): void {
  let e = x, m = x;
  if (sizeof<T>() == 8) {
    const above = i64x2.add(x, i64x2.splat(0x4000000000000000 - 0x3fe6a09e667f3bcd)); // exponent + 1024
    const count = i64x2.shr_u(above, 52);
    e = f64x2.sub(i64x2.add(count, used<T>(COUNTER)), used<T>(OFFSET_COUNTER));
    m = i64x2.sub(x, i64x2.shl(i64x2.sub(count, i64x2.splat(1024)), 52));
  } else {
    const above = i32x4.add(x, i32x4.splat(0x40000000 - 0x3f3504f3)); // exponent + 128
    const count = i32x4.shr_u(above, 23);
    e = f32x4.sub(i32x4.add(count, used<T>(COUNTER)), used<T>(OFFSET_COUNTER));
    m = i32x4.sub(x, i32x4.shl(i32x4.sub(count, i32x4.splat(128)), 23));
  }
  const one = used<T>(ONE);
  const s = v128.div<T>(v128.sub<T>(m, one), v128.add<T>(m, one));
  const z = v128.mul<T>(s, s);
  const t = sizeof<T>() == 8 ? LOG_64 : LOG_32;
  let log = v128.add<T>(pair<T>(t, 0, z), v128.mul<T>(v128.mul<T>(z, z), pair<T>(t, 2, z)));
  if (sizeof<T>() == 8) {
    const z2 = v128.mul<T>(z, z);
    const high = v128.add<T>(pair<T>(t, 4, z), v128.mul<T>(z2, pair<T>(t, 6, z)));
    log = v128.add<T>(log, v128.mul<T>(v128.mul<T>(z2, z2), high));
  }
  v128.store(EXACT + o, v128.mul<T>(leading, e));
  v128.store(SMALL + o, v128.add<T>(v128.mul<T>(rest, e), v128.mul<T>(n, v128.mul<T>(s, log))));
}

/** 2 to the sum of EXACT and SMALL. */
// @ts-ignore: decorator
@inline
export function exp2<T>(o: usize): v128 {
  const exact = v128.load(EXACT + o), small = v128.load(SMALL + o);
  const k = v128.nearest<T>(v128.add<T>(exact, small));
  const left = v128.add<T>(v128.sub<T>(exact, k), small);
  return scaledExp<T>(k, v128.mul<T>(left, used<T>(LN2)));
}
