/** The rate-of-rise test: the tank is shut off from its pumps and the pressure rises. Leak or outgassing? */
import { readingFaults, type PressureReading, type ReadingFault } from './readings.ts';
import { MBAR_WORDS, shareWords, type VacuumWords } from './words.ts';

/** A value with the range that the readings allow, 19 times out of 20. */
export interface Ranged {
  readonly low: number;
  readonly best: number;
  readonly high: number;
}

export type RiseVerdict = 'leak' | 'outgassing' | 'both' | 'undecided' | 'no rise';

export interface RiseFit {
  /** Pa at the first reading */
  readonly start: number;
  /** Pa·m³/s */
  readonly leak: Ranged;
  /** Pa·m³/s at the first reading, beside the leak */
  readonly outgassing: number;
  /** s after which the outgassing has fallen to 1/e; null if there is none */
  readonly settling: number | null;
  /** share of the leak in the rise from the first reading to the last */
  readonly leakShare: Ranged;
  /** Pa, root mean square of what the fit leaves over */
  readonly scatter: number;
  /** Pa at each reading */
  readonly fitted: Float64Array;
  readonly verdict: RiseVerdict;
  readonly sentence: string;
}

export type RateOfRise =
  { readonly ok: true; readonly fit: RiseFit } | { readonly ok: false; readonly faults: readonly ReadingFault[] };

/** p₀, leak, outgassing and its time: four numbers, and two more readings to judge them by. */
const LEAST_READINGS = 6;
/** Settling times that are tried, over the length of the test. A slower one cannot be told from a leak. */
const FASTEST = 0.03;
const SLOWEST = 1;
const TRIALS = 60;
/** No gauge is read better than this share of the rise: keeps exact numbers from claiming certainty. */
const READABLE = 1e-3;
/** A rise of fewer standard deviations than this is none. */
const NO_RISE = 4;
/** Shares of the rise beyond which one cause is named alone. */
const MAINLY = 0.7;

/**
 * 0.975 quantile of Student's t.
 *
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.7.5 (from memory); 4 % low at ν = 2
 */
export function studentQuantile(freedom: number): number {
  const z = 1.959964;
  return (
    z +
    (z ** 3 + z) / (4 * freedom) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * freedom ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * freedom ** 3)
  );
}

/** Sums of one settling time, all about their means. */
interface Moments {
  readonly settling: number;
  readonly shape: Float64Array;
  readonly ss: number;
  readonly st: number;
  readonly sp: number;
}

interface Sums {
  readonly time: Float64Array;
  readonly pressure: Float64Array;
  readonly tt: number;
  readonly tp: number;
  readonly pp: number;
  readonly trials: readonly Moments[];
}

function centred(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function sumsOf(readings: readonly PressureReading[]): Sums {
  const start = readings[0]!.time;
  const span = readings.at(-1)!.time - start;
  const time = centred(Float64Array.from(readings, (reading) => reading.time));
  const pressure = centred(Float64Array.from(readings, (reading) => reading.pressure));
  const trials = Array.from({ length: TRIALS }, (_, k): Moments => {
    const settling = span * FASTEST * (SLOWEST / FASTEST) ** (k / (TRIALS - 1));
    const shape = centred(Float64Array.from(readings, (reading) => -Math.expm1((start - reading.time) / settling)));
    return { settling, shape, ss: dot(shape, shape), st: dot(shape, time), sp: dot(shape, pressure) };
  });
  return { time, pressure, tt: dot(time, time), tp: dot(time, pressure), pp: dot(pressure, pressure), trials };
}

/** Best fit with a given leak slope: what is left over, and the outgassing that goes with it. */
interface Profile {
  readonly left: number;
  /** Pa/s */
  readonly slope: number;
  /** Pa that the outgassing would bring in the end, ≥ 0 */
  readonly amplitude: number;
  readonly settling: number;
}

function profileAt({ tt, tp, pp, trials }: Sums, slope: number): Profile {
  const straight = pp - 2 * slope * tp + slope * slope * tt;
  let best: Profile = { left: straight, slope, amplitude: 0, settling: trials[0]!.settling };
  for (const { settling, ss, st, sp } of trials) {
    const amplitude = Math.max(0, (sp - slope * st) / ss);
    const left = straight - amplitude * (2 * (sp - slope * st) - amplitude * ss);
    if (left < best.left) best = { left, slope, amplitude, settling };
  }
  return best;
}

/** Least squares with a leak and an outgassing that are not negative. */
function bestProfile(sums: Sums): Profile {
  const { tt, tp, trials } = sums;
  let best = profileAt(sums, 0);
  const consider = (slope: number): void => {
    const found = profileAt(sums, Math.max(0, slope));
    if (found.left < best.left) best = found;
  };
  consider(tp / tt);
  for (const { ss, st, sp } of trials) {
    const determinant = tt * ss - st * st;
    if (determinant > 0) consider((tp * ss - sp * st) / determinant);
  }
  return best;
}

/** Where the profile, going from the best slope toward another, has risen to a limit. */
function slopeAtLimit(sums: Sums, from: number, to: number, limit: number): number {
  if (profileAt(sums, to).left <= limit) return to;
  let [inside, outside] = [from, to];
  for (let i = 0; i < 50; i++) {
    const middle = (inside + outside) / 2;
    if (profileAt(sums, middle).left <= limit) inside = middle;
    else outside = middle;
  }
  return inside;
}

/**
 * Tells a leak from outgassing by the shape of the rise.
 *
 *     p(t) = p₀ + Q_L t/V + b (1 − e^(−t/τ)),   Q_L ≥ 0, b ≥ 0
 *
 * A leak rises in a straight line, outgassing bends over as the walls come to rest with the gas. Fitted by
 * least squares without negative parts, for τ from 0.03 to 1 of the length of the test; the range of the leak
 * is where the fit, all else adjusted, is not worse than Student's t allows. Outgassing that settles more
 * slowly than the test lasts looks like a leak: test longer, or again after a day of pumping.
 *
 * @param readings in order of time
 * @param volume [m³] of the closed tank
 * @returns the fit, or what is wrong with the readings
 * @throws RangeError if the volume is not above zero
 * @see straight line against bend: common practice of vacuum testing
 */
export function rateOfRise(
  readings: readonly PressureReading[],
  volume: number,
  words: VacuumWords = MBAR_WORDS,
): RateOfRise {
  if (!(volume > 0 && volume < Infinity)) throw new RangeError(`volume: expected a volume above zero; found ${volume}`);
  const faults = readingFaults(readings);
  if (faults.length > 0) return { ok: false, faults };
  if (readings.length < LEAST_READINGS) {
    const message = `expected at least ${LEAST_READINGS} readings to tell a leak from outgassing; found ${readings.length}`;
    return { ok: false, faults: [{ row: null, column: null, message }] };
  }
  return { ok: true, fit: fitOf(readings, volume, words) };
}

function fitOf(readings: readonly PressureReading[], volume: number, words: VacuumWords): RiseFit {
  const sums = sumsOf(readings);
  const span = readings.at(-1)!.time - readings[0]!.time;
  const best = bestProfile(sums);
  const freedom = readings.length - 4;
  const range = Math.max(...sums.pressure) - Math.min(...sums.pressure);
  const variance = Math.max(best.left / freedom, (READABLE * range) ** 2, Number.MIN_VALUE);
  const limit = best.left + variance * studentQuantile(freedom) ** 2;
  const steepest = (4 * range) / span + Number.MIN_VALUE;
  const low = slopeAtLimit(sums, best.slope, 0, limit);
  const high = slopeAtLimit(sums, best.slope, Math.max(steepest, 2 * best.slope), limit);
  const fitted = fittedPressures(readings, sums, best);
  const rise = fitted.at(-1)! - fitted[0]!;
  const shareOf = (slope: number): number => (rise > 0 ? Math.min(1, (slope * span) / rise) : 0);
  const leakShare: Ranged = { low: shareOf(low), best: shareOf(best.slope), high: shareOf(high) };
  const hasRise = rise > NO_RISE * Math.sqrt(variance);
  const verdict = hasRise ? verdictOf(leakShare) : 'no rise';
  const fit = {
    start: fitted[0]!,
    leak: { low: low * volume, best: best.slope * volume, high: high * volume },
    outgassing: (best.amplitude / best.settling) * volume,
    settling: best.amplitude > 0 ? best.settling : null,
    leakShare,
    scatter: Math.sqrt(Math.max(0, best.left) / readings.length),
    fitted,
    verdict,
  } as const;
  return { ...fit, sentence: sentenceOf(fit, words) };
}

function fittedPressures(readings: readonly PressureReading[], sums: Sums, best: Profile): Float64Array {
  const mean = readings.reduce((sum, { pressure }) => sum + pressure, 0) / readings.length;
  const shape = sums.trials.find(({ settling }) => settling === best.settling)!.shape;
  return sums.time.map((time, i) => mean + best.slope * time + best.amplitude * shape[i]!);
}

function verdictOf({ low, high }: Ranged): RiseVerdict {
  if (low > MAINLY) return 'leak';
  if (high < 1 - MAINLY) return 'outgassing';
  return high - low < MAINLY && low > 0 && high < 1 ? 'both' : 'undecided';
}

function sentenceOf(fit: Omit<RiseFit, 'sentence'>, words: VacuumWords): string {
  const { leak, outgassing, leakShare, verdict } = fit;
  const between = `${words.flow(leak.low)} to ${words.flow(leak.high)}`;
  const shares = `${shareWords(leakShare.low)} to ${shareWords(leakShare.high)} of the rise`;
  switch (verdict) {
    case 'leak':
      return `A leak of ${words.flow(leak.best)} (${between}) makes ${shares}: find it.`;
    case 'outgassing':
      return `Outgassing, ${words.flow(outgassing)} at the start; a leak makes at most ${shareWords(leakShare.high)} of the rise: pump longer.`;
    case 'both':
      return `Both: a leak of ${words.flow(leak.best)} (${between}) makes ${shares}, outgassing the rest.`;
    case 'undecided':
      return `These readings cannot tell: a leak could make ${shares}. Take more readings, or test for longer.`;
    case 'no rise':
      return 'The pressure does not rise by more than the readings scatter.';
  }
}

/** Gas that comes in between two readings: V Δp/Δt, Pa·m³/s. */
export function riseThroughput(volume: number, first: PressureReading, second: PressureReading): number {
  return (volume * (second.pressure - first.pressure)) / (second.time - first.time);
}

/** J/(mol·K), exact. @see SI Brochure, 9th edition (BIPM 2019) */
const GAS_CONSTANT = 8.31446261815324;

/**
 * Gas that comes in between two readings at their temperatures, mol/s.
 *
 *     ṅ = (V/R) (p₂/T₂ − p₁/T₁)/(t₂ − t₁)
 *
 * @see 40 CFR 1065.644
 */
export function riseMolarFlow(
  volume: number,
  first: PressureReading & { readonly temperature: number },
  second: PressureReading & { readonly temperature: number },
): number {
  const moles = second.pressure / second.temperature - first.pressure / first.temperature;
  return ((volume / GAS_CONSTANT) * moles) / (second.time - first.time);
}
