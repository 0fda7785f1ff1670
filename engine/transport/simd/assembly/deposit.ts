// The deposit kernels with two points to a vector, in the operation order of depositKernels.ts, to the same bits.
//
// Memory: a run of up to RUN points as seven arrays of f64, one after another:
// x, y, z, normal x, y, z, and the sum that is added to. `bytes` is the run's length in bytes,
// rounded up to whole vectors; the filling points have normals of zero and catch nothing.

const RUN_BYTES: usize = 512 * 8;
const X: usize = 1024;
const Y: usize = X + RUN_BYTES;
const Z: usize = Y + RUN_BYTES;
const NX: usize = Z + RUN_BYTES;
const NY: usize = NX + RUN_BYTES;
const NZ: usize = NY + RUN_BYTES;
const SUM: usize = NZ + RUN_BYTES;

/** Where the run's arrays start. */
export function base(): usize {
  return X;
}

/** Zeroes the sum. */
export function clear(bytes: usize): void {
  memory.fill(SUM, 0, bytes);
}

// @ts-ignore: decorator
@inline
function dot(ax: v128, ay: v128, az: v128, bx: v128, by: v128, bz: v128): v128 {
  return f64x2.add(f64x2.add(f64x2.mul(ax, bx), f64x2.mul(ay, by)), f64x2.mul(az, bz));
}

/** r², at least LEAST_R2 of depositKernels.ts. */
// @ts-ignore: decorator
@inline
function squared(dx: v128, dy: v128, dz: v128): v128 {
  return f64x2.pmax(f64x2.splat(1e-150), dot(dx, dy, dz, dx, dy, dz));
}

// @ts-ignore: decorator
@inline
function addTo(o: usize, term: v128): void {
  v128.store(SUM + o, f64x2.add(v128.load(SUM + o), term));
}

/** max(0, −d·n): r·cosArrive, 0 where the source is behind the point. */
// @ts-ignore: decorator
@inline
function arriving(dx: v128, dy: v128, dz: v128, o: usize): v128 {
  const cosArriveR = f64x2.neg(dot(dx, dy, dz, v128.load(NX + o), v128.load(NY + o), v128.load(NZ + o)));
  return f64x2.pmax(f64x2.splat(0), cosArriveR);
}

/** w · max(0, d·a) · max(0, −d·n) / r⁴ */
export function knudsen(bytes: usize, px: f64, py: f64, pz: f64, qx: f64, qy: f64, qz: f64, weight: f64): void {
  const sx = f64x2.splat(px), sy = f64x2.splat(py), sz = f64x2.splat(pz);
  const ax = f64x2.splat(qx), ay = f64x2.splat(qy), az = f64x2.splat(qz);
  const w = f64x2.splat(weight), zero = f64x2.splat(0);
  for (let o: usize = 0; o < bytes; o += 16) {
    const dx = f64x2.sub(v128.load(X + o), sx), dy = f64x2.sub(v128.load(Y + o), sy), dz = f64x2.sub(v128.load(Z + o), sz);
    const cosEmitR = f64x2.pmax(zero, dot(dx, dy, dz, ax, ay, az));
    const r2 = squared(dx, dy, dz);
    addTo(o, f64x2.div(f64x2.mul(f64x2.mul(w, cosEmitR), arriving(dx, dy, dz, o)), f64x2.mul(r2, r2)));
  }
}

/** w · max(0, cosφ)ⁿ · max(0, −d·n) / r³ for a whole n ≥ 1 */
export function cosinePower(bytes: usize, px: f64, py: f64, pz: f64, qx: f64, qy: f64, qz: f64, weight: f64, power: i32): void {
  const sx = f64x2.splat(px), sy = f64x2.splat(py), sz = f64x2.splat(pz);
  const ax = f64x2.splat(qx), ay = f64x2.splat(qy), az = f64x2.splat(qz);
  const w = f64x2.splat(weight), zero = f64x2.splat(0), one = f64x2.splat(1);
  for (let o: usize = 0; o < bytes; o += 16) {
    const dx = f64x2.sub(v128.load(X + o), sx), dy = f64x2.sub(v128.load(Y + o), sy), dz = f64x2.sub(v128.load(Z + o), sz);
    const perR = f64x2.div(one, f64x2.sqrt(squared(dx, dy, dz)));
    const cosEmit = f64x2.mul(f64x2.pmax(zero, dot(dx, dy, dz, ax, ay, az)), perR);
    let lobe = cosEmit;
    for (let k = 1; k < power; k++) lobe = f64x2.mul(lobe, cosEmit);
    const perR3 = f64x2.mul(f64x2.mul(perR, perR), perR);
    addTo(o, f64x2.mul(f64x2.mul(f64x2.mul(w, lobe), arriving(dx, dy, dz, o)), perR3));
  }
}

/** w · max(0, −d·n) / r³ */
export function isotropic(bytes: usize, px: f64, py: f64, pz: f64, weight: f64): void {
  const sx = f64x2.splat(px), sy = f64x2.splat(py), sz = f64x2.splat(pz);
  const w = f64x2.splat(weight);
  for (let o: usize = 0; o < bytes; o += 16) {
    const dx = f64x2.sub(v128.load(X + o), sx), dy = f64x2.sub(v128.load(Y + o), sy), dz = f64x2.sub(v128.load(Z + o), sz);
    const r2 = squared(dx, dy, dz);
    addTo(o, f64x2.div(f64x2.mul(w, arriving(dx, dy, dz, o)), f64x2.mul(r2, f64x2.sqrt(r2))));
  }
}

/** w · |d × a| · max(0, −d·n) / r⁴ */
export function wire(bytes: usize, px: f64, py: f64, pz: f64, qx: f64, qy: f64, qz: f64, weight: f64): void {
  const sx = f64x2.splat(px), sy = f64x2.splat(py), sz = f64x2.splat(pz);
  const ax = f64x2.splat(qx), ay = f64x2.splat(qy), az = f64x2.splat(qz);
  const w = f64x2.splat(weight);
  for (let o: usize = 0; o < bytes; o += 16) {
    const dx = f64x2.sub(v128.load(X + o), sx), dy = f64x2.sub(v128.load(Y + o), sy), dz = f64x2.sub(v128.load(Z + o), sz);
    const cx = f64x2.sub(f64x2.mul(dy, az), f64x2.mul(dz, ay));
    const cy = f64x2.sub(f64x2.mul(dz, ax), f64x2.mul(dx, az));
    const cz = f64x2.sub(f64x2.mul(dx, ay), f64x2.mul(dy, ax));
    const r2 = squared(dx, dy, dz);
    const sinR = f64x2.sqrt(dot(cx, cy, cz, cx, cy, cz));
    addTo(o, f64x2.div(f64x2.mul(f64x2.mul(w, sinR), arriving(dx, dy, dz, o)), f64x2.mul(r2, r2)));
  }
}

// @ts-ignore: decorator
@inline
function horner(c: v128, inner: v128, next: f64): v128 {
  return f64x2.add(f64x2.splat(next), f64x2.mul(c, inner));
}

/** E(1 − c²) by the rational function of engine/emission/ellipticE.ts. */
// @ts-ignore: decorator
@inline
function fastEllipticE(c: v128): v128 {
  let p = horner(c, f64x2.splat(36032.75174053072), 86603.26932349945);
  p = horner(c, p, 95039.59324411133);
  p = horner(c, p, 48141.721024448416);
  p = horner(c, p, 6995.713993880915);
  p = horner(c, p, 222.292759548833);
  p = horner(c, p, 0.9999999653466566);
  let q = horner(c, f64x2.splat(36337.61649276337), 82704.17595701138);
  q = horner(c, q, 47563.33043568358);
  q = horner(c, q, 6991.924787351864);
  q = horner(c, q, 222.29229244687025);
  q = horner(c, q, 1);
  return f64x2.div(p, q);
}

/** w · E(sin²φ) · max(0, −d·n) / r³ */
export function coil(bytes: usize, px: f64, py: f64, pz: f64, qx: f64, qy: f64, qz: f64, weight: f64): void {
  const sx = f64x2.splat(px), sy = f64x2.splat(py), sz = f64x2.splat(pz);
  const ax = f64x2.splat(qx), ay = f64x2.splat(qy), az = f64x2.splat(qz);
  const w = f64x2.splat(weight), one = f64x2.splat(1);
  for (let o: usize = 0; o < bytes; o += 16) {
    const dx = f64x2.sub(v128.load(X + o), sx), dy = f64x2.sub(v128.load(Y + o), sy), dz = f64x2.sub(v128.load(Z + o), sz);
    const perR = f64x2.div(one, f64x2.sqrt(squared(dx, dy, dz)));
    const c = f64x2.mul(f64x2.abs(dot(dx, dy, dz, ax, ay, az)), perR);
    const perR3 = f64x2.mul(f64x2.mul(perR, perR), perR);
    addTo(o, f64x2.mul(f64x2.mul(f64x2.mul(w, fastEllipticE(c)), arriving(dx, dy, dz, o)), perR3));
  }
}
