/** How the checks of a plant report. */

/** Notes one problem: where, and what would be right. */
export type Report = (path: string, message: string) => void;

/** A length for a message. */
export const metres = (value: number): string => `${Number(value.toPrecision(4))} m`;
