/** Bytes of columns that each worker keeps, a quarter more waiting to be written over: two workers hold 200 filaments on 40,000 points. */
export const STORE_BYTES_PER_WORKER = 32 * 2 ** 20;
