/** One figure of the bench. */
export interface Row {
  readonly what: string;
  readonly figure: string;
  /** what it should be, if anything was asked for */
  readonly goal: string;
}
