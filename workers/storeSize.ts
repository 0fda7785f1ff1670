/** Bytes of columns that each worker keeps: two workers hold 96 filaments on 100,000 points. */
export const STORE_BYTES_PER_WORKER = 64 * 2 ** 20;
