// Where things lie in memory, and vectors of either precision: T is f64 (two points to a vector) or f32 (four).
//
// Points lie in runs of up to 512 (RUN of depositKernel.ts), each run as six arrays of T, one after another: x, y, z,
// normal x, y, z. RUNS has room for 128 of them (SLOTS of runStore.ts) in double precision. `bytes` is the length of
// one array in use, rounded up to whole vectors; the filling points have normals of zero and catch nothing.

export const RUNS: usize = memory.data(128 * 6 * 512 * 8, 16);

/** [512] f64: what kernels are for. */
export const SUM: usize = memory.data(512 * 8, 16);
/** [4 × 512] f64: weighted sums of sums, one after another. */
export const MIXES: usize = memory.data(4 * 512 * 8, 16);
/** [512] f32: the sum of a few sub-sources in single precision, before it goes into SUM. */
export const PART: usize = memory.data(512 * 4, 16);
/** [512] T: deposits of one sub-source on their way through gas or past a shield. */
export const SIDE: usize = memory.data(512 * 8, 16);
/** [512] T: what a shield took of them. */
export const CUT: usize = memory.data(512 * 8, 16);
/** [512] T each: cosEmit, and the deposit without its lobe, for laws in two passes. */
export const COS: usize = memory.data(512 * 8, 16);
export const TAIL: usize = memory.data(512 * 8, 16);
/** [512] T each: n log₂ cosEmit in two parts. */
export const EXACT: usize = memory.data(512 * 8, 16);
export const SMALL: usize = memory.data(512 * 8, 16);
/** [512] T: r / λ. */
export const PATHS: usize = memory.data(512 * 8, 16);

/** [64 × 8] f64, sub-sources (MOST_PLACED of simdKernel.ts): place, axis, weight, power. */
export const SOURCES: usize = memory.data(64 * 8 * 8, 16);
/** [4] f64, of their shield: direction, cosine of the half angle. */
export const SHIELD: usize = memory.data(4 * 8, 16);

let source: usize = SOURCES;

/** Turns to sub-source j of SOURCES. */
export function turnTo(j: i32): void {
  source = SOURCES + 64 * j;
}

const HELD: usize = memory.data(16, 16);

/** The same number in every lane, by way of memory: V8 would otherwise build it anew in every turn of a loop. */
// @ts-ignore: decorator
@inline
export function held<T>(x: f64): v128 {
  v128.store(HELD, v128.splat<T>(<T>x));
  return v128.load(HELD);
}

/** Number k of the sub-source. */
// @ts-ignore: decorator
@inline
export function given(k: usize): f64 {
  return load<f64>(source + 8 * k);
}

/** The same in every lane. */
// @ts-ignore: decorator
@inline
export function givenTo<T>(k: usize): v128 {
  return held<T>(given(k));
}

/** The points at hand: coordinate x, and so on. */
// @ts-ignore: decorator
@inline
export function px<T>(at: usize): v128 {
  return v128.load(at, 0 * 512 * sizeof<T>());
}
// @ts-ignore: decorator
@inline
export function py<T>(at: usize): v128 {
  return v128.load(at, 1 * 512 * sizeof<T>());
}
// @ts-ignore: decorator
@inline
export function pz<T>(at: usize): v128 {
  return v128.load(at, 2 * 512 * sizeof<T>());
}
// @ts-ignore: decorator
@inline
export function nx<T>(at: usize): v128 {
  return v128.load(at, 3 * 512 * sizeof<T>());
}
// @ts-ignore: decorator
@inline
export function ny<T>(at: usize): v128 {
  return v128.load(at, 4 * 512 * sizeof<T>());
}
// @ts-ignore: decorator
@inline
export function nz<T>(at: usize): v128 {
  return v128.load(at, 5 * 512 * sizeof<T>());
}

/** Entry k of a table in every lane. */
// @ts-ignore: decorator
@inline
export function entry<T>(table: usize, k: usize): v128 {
  return v128.load_splat<T>(table + k * sizeof<T>());
}

// @ts-ignore: decorator
@inline
export function dot<T>(ax: v128, ay: v128, az: v128, bx: v128, by: v128, bz: v128): v128 {
  return v128.add<T>(v128.add<T>(v128.mul<T>(ax, bx), v128.mul<T>(ay, by)), v128.mul<T>(az, bz));
}

/** Least r²: LEAST_R2 of depositKernels.ts; in single precision the square of what a coordinate is rounded by. */
// @ts-ignore: decorator
@inline
export function leastSquare<T>(): v128 {
  return held<T>(sizeof<T>() == 8 ? 1e-150 : 1e-16);
}

/** max(0, −d·n): r·cosArrive, 0 where the source is behind the point. */
// @ts-ignore: decorator
@inline
export function arriving<T>(dx: v128, dy: v128, dz: v128, at: usize): v128 {
  const cosArriveR = v128.neg<T>(dot<T>(dx, dy, dz, nx<T>(at), ny<T>(at), nz<T>(at)));
  return v128.pmax<T>(v128.splat<T>(<T>0), cosArriveR);
}

// @ts-ignore: decorator
@inline
export function addTo<T>(at: usize, term: v128): void {
  v128.store(at, v128.add<T>(v128.load(at), term));
}
