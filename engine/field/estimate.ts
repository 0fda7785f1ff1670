/** A number and how far it may be off, both in the same unit. */
export interface Estimate {
  readonly value: number;
  readonly error: number;
}

/** An extreme value, its error and its place, m. */
export interface PlacedEstimate extends Estimate {
  readonly position: readonly [number, number, number];
}
