/** How the oxide on aluminium grows in air. */

/** One published thickness after a time in air. */
export interface OxideStage {
  /** s */
  readonly time: number;
  /** m */
  readonly thickness: number;
  /** how far published values spread to either side, m */
  readonly spread: number;
  readonly source: string;
}

const HOUR = 3600;
const DAY = 24 * HOUR;
const HASS = 'after G. Hass, from memory, ±0.5 nm';

/**
 * Published stages of growth at room temperature.
 *
 * Two years: 0.8 nm of dense alumina under 3 nm of hydrated oxide.
 */
export const OXIDE_STAGES: readonly OxideStage[] = [
  { time: HOUR, thickness: 1.5e-9, spread: 0.5e-9, source: HASS },
  { time: DAY, thickness: 2.25e-9, spread: 0.5e-9, source: HASS },
  { time: 30 * DAY, thickness: 3.5e-9, spread: 0.5e-9, source: HASS },
  {
    time: 2 * 365.25 * DAY,
    thickness: 3.8e-9,
    spread: 0.7e-9,
    source: 'P. B. Barna et al., Thin Solid Films 120 (1984) 249',
  },
];

export interface OxideEstimate {
  /** m */
  readonly value: number;
  /** m, to either side */
  readonly error: number;
}

/**
 * Thickness of the oxide after a time in air, linear in the logarithm of time between the published stages.
 *
 * The first 1.5 nm form almost at once, so they count as there from the first second in air; beyond
 * the last stage the thickness holds.
 *
 * @param time [s] since the tank was opened, ≥ 0
 */
export function oxideAfter(time: number): OxideEstimate {
  const first = OXIDE_STAGES[0]!;
  const last = OXIDE_STAGES.at(-1)!;
  if (!(time >= 1)) return { value: 0, error: 0 };
  if (time <= first.time) return { value: first.thickness, error: first.spread };
  if (time >= last.time) return { value: last.thickness, error: last.spread };
  const i = OXIDE_STAGES.findIndex((stage) => stage.time >= time);
  const [a, b] = [OXIDE_STAGES[i - 1]!, OXIDE_STAGES[i]!];
  const share = Math.log(time / a.time) / Math.log(b.time / a.time);
  return {
    value: a.thickness + share * (b.thickness - a.thickness),
    error: a.spread + share * (b.spread - a.spread),
  };
}
