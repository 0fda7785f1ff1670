/**
 * The hot loops: deposit of one sub-source on a run of oriented points, without shadows, shields and gas.
 *
 *     out[i − begin] += w · I(u) · cosArrive / r²,   cosArrive = −u·n > 0
 *
 * One loop for each law, so that nothing is decided inside. With d = point − source the sums are
 * written in r² and r·cos: no angle is ever formed. Kernels trust their caller and add to `out`.
 */
import type { FilamentSource } from '../emission/filamentSource.ts';
import { tableIntensity } from '../emission/emissionTable.ts';
import { fastEllipticE } from '../emission/ellipticE.ts';
import type { OrientedPoints } from '../geometry/orientedPoints.ts';

/** Highest whole power of the cosine that is multiplied out instead of going through Math.pow. */
export const MAX_WHOLE_POWER = 8;

/** Least r², m²: keeps a point on its source from dividing by zero; its fourth power of r is still a number. */
const LEAST_R2 = 1e-150;

/** Adds the deposit of sub-source j per kilogram of its filament, 1/m², to out[0 … end − begin). */
export function addDepositInto(
  out: Float64Array,
  points: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
): void {
  const { law } = source;
  switch (law.kind) {
    case 'isotropic':
      return addIsotropic(out, points, begin, end, source, j);
    case 'cosine':
      if (law.power === 1) return addKnudsen(out, points, begin, end, source, j);
      if (isWholePower(law.power)) return addWholeCosine(out, points, begin, end, source, j, law.power);
      return addCosinePower(out, points, begin, end, source, j, law.power);
    case 'wire':
      return addWire(out, points, begin, end, source, j);
    case 'coil':
      return addCoil(out, points, begin, end, source, j);
    case 'table': {
      const { table } = law;
      return addAny(out, points, begin, end, source, j, (cosEmit) => tableIntensity(table, cosEmit));
    }
  }
}

function addIsotropic(
  out: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
): void {
  const s = source.position;
  const sx = s[3 * j]!;
  const sy = s[3 * j + 1]!;
  const sz = s[3 * j + 2]!;
  const w = source.weight[j]! / (4 * Math.PI);
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - sx;
    const dy = p[o + 1]! - sy;
    const dz = p[o + 2]! - sz;
    const cosArriveR = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!);
    if (cosArriveR <= 0) continue;
    const r2 = Math.max(LEAST_R2, dx * dx + dy * dy + dz * dz);
    out[i - begin]! += (w * cosArriveR) / (r2 * Math.sqrt(r2));
  }
}

function addKnudsen(
  out: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
): void {
  const s = source.position;
  const a = source.axis;
  const sx = s[3 * j]!;
  const sy = s[3 * j + 1]!;
  const sz = s[3 * j + 2]!;
  const ax = a[3 * j]!;
  const ay = a[3 * j + 1]!;
  const az = a[3 * j + 2]!;
  const w = source.weight[j]! / Math.PI;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - sx;
    const dy = p[o + 1]! - sy;
    const dz = p[o + 2]! - sz;
    const cosEmitR = dx * ax + dy * ay + dz * az;
    const cosArriveR = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!);
    if (cosEmitR <= 0 || cosArriveR <= 0) continue;
    const r2 = Math.max(LEAST_R2, dx * dx + dy * dy + dz * dz);
    out[i - begin]! += (w * cosEmitR * cosArriveR) / (r2 * r2);
  }
}

/** Whether a cosine power goes by multiplication alone. */
export function isWholePower(power: number): boolean {
  return Number.isInteger(power) && power >= 0 && power <= MAX_WHOLE_POWER;
}

function addWholeCosine(
  out: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
  power: number,
): void {
  const s = source.position;
  const a = source.axis;
  const sx = s[3 * j]!;
  const sy = s[3 * j + 1]!;
  const sz = s[3 * j + 2]!;
  const ax = a[3 * j]!;
  const ay = a[3 * j + 1]!;
  const az = a[3 * j + 2]!;
  const w = (source.weight[j]! * (power + 1)) / (2 * Math.PI);
  const isOdd = power % 2 === 1;
  const pairs = power >> 1;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - sx;
    const dy = p[o + 1]! - sy;
    const dz = p[o + 2]! - sz;
    const cosEmitR = dx * ax + dy * ay + dz * az;
    const cosArriveR = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!);
    if (cosEmitR <= 0 || cosArriveR <= 0) continue;
    const perR2 = 1 / Math.max(LEAST_R2, dx * dx + dy * dy + dz * dz);
    const cosEmit2 = cosEmitR * cosEmitR * perR2;
    // an odd power needs no root: cosEmit · cosArrive / r² = cosEmitR · cosArriveR / r⁴
    let term = w * cosArriveR;
    term = isOdd ? term * cosEmitR * (perR2 * perR2) : term * (perR2 * Math.sqrt(perR2));
    for (let k = 0; k < pairs; k++) term *= cosEmit2;
    out[i - begin]! += term;
  }
}

function addCosinePower(
  out: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
  power: number,
): void {
  const s = source.position;
  const a = source.axis;
  const sx = s[3 * j]!;
  const sy = s[3 * j + 1]!;
  const sz = s[3 * j + 2]!;
  const ax = a[3 * j]!;
  const ay = a[3 * j + 1]!;
  const az = a[3 * j + 2]!;
  const w = (source.weight[j]! * (power + 1)) / (2 * Math.PI);
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - sx;
    const dy = p[o + 1]! - sy;
    const dz = p[o + 2]! - sz;
    const cosEmitR = dx * ax + dy * ay + dz * az;
    const cosArriveR = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!);
    if (cosEmitR <= 0 || cosArriveR <= 0) continue;
    const perR = 1 / Math.sqrt(Math.max(LEAST_R2, dx * dx + dy * dy + dz * dz));
    out[i - begin]! += w * cosArriveR * (perR * perR * perR) * (cosEmitR * perR) ** power;
  }
}

function addWire(
  out: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
): void {
  const s = source.position;
  const a = source.axis;
  const sx = s[3 * j]!;
  const sy = s[3 * j + 1]!;
  const sz = s[3 * j + 2]!;
  const ax = a[3 * j]!;
  const ay = a[3 * j + 1]!;
  const az = a[3 * j + 2]!;
  const w = source.weight[j]! / Math.PI ** 2;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - sx;
    const dy = p[o + 1]! - sy;
    const dz = p[o + 2]! - sz;
    const cosArriveR = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!);
    if (cosArriveR <= 0) continue;
    // |d × a| = r sinθ without the cancellation of r² − (d·a)²
    const cx = dy * az - dz * ay;
    const cy = dz * ax - dx * az;
    const cz = dx * ay - dy * ax;
    const r2 = Math.max(LEAST_R2, dx * dx + dy * dy + dz * dz);
    out[i - begin]! += (w * Math.sqrt(cx * cx + cy * cy + cz * cz) * cosArriveR) / (r2 * r2);
  }
}

function addCoil(
  out: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
): void {
  const s = source.position;
  const a = source.axis;
  const sx = s[3 * j]!;
  const sy = s[3 * j + 1]!;
  const sz = s[3 * j + 2]!;
  const ax = a[3 * j]!;
  const ay = a[3 * j + 1]!;
  const az = a[3 * j + 2]!;
  const w = (source.weight[j]! * 2) / Math.PI ** 3;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - sx;
    const dy = p[o + 1]! - sy;
    const dz = p[o + 2]! - sz;
    const cosArriveR = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!);
    if (cosArriveR <= 0) continue;
    const perR = 1 / Math.sqrt(Math.max(LEAST_R2, dx * dx + dy * dy + dz * dz));
    const cosAxis = Math.abs(dx * ax + dy * ay + dz * az) * perR;
    out[i - begin]! += w * cosArriveR * (perR * perR * perR) * fastEllipticE(cosAxis);
  }
}

/** Any law by its intensity, 1/sr: the readable form, and the one for measured tables. */
export function addAny(
  out: Float64Array,
  { position: p, normal: n }: OrientedPoints,
  begin: number,
  end: number,
  source: FilamentSource,
  j: number,
  intensity: (cosEmit: number) => number,
): void {
  const s = source.position;
  const a = source.axis;
  for (let i = begin, o = 3 * begin; i < end; i++, o += 3) {
    const dx = p[o]! - s[3 * j]!;
    const dy = p[o + 1]! - s[3 * j + 1]!;
    const dz = p[o + 2]! - s[3 * j + 2]!;
    const cosArriveR = -(dx * n[o]! + dy * n[o + 1]! + dz * n[o + 2]!);
    if (cosArriveR <= 0) continue;
    const r2 = Math.max(LEAST_R2, dx * dx + dy * dy + dz * dz);
    const r = Math.sqrt(r2);
    const cosEmit = (dx * a[3 * j]! + dy * a[3 * j + 1]! + dz * a[3 * j + 2]!) / r;
    out[i - begin]! += (source.weight[j]! * intensity(cosEmit) * cosArriveR) / (r2 * r);
  }
}
