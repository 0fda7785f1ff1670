/**
 * Random numbers that belong to an atom: keyed by seed, chunk and place in the chunk, so that an atom flies
 * the same way whoever computes it.
 *
 * xoshiro128++ with its four words set by a mixer from the key; a key's stream is far longer than a flight.
 *
 * @see D. Blackman, S. Vigna, Scrambled linear pseudorandom number generators, ACM TOMS 47 (2021) 36
 */

/** Four words of state. */
export type Random = Int32Array;

/** Room for one stream; key it before use. */
export function createRandom(): Random {
  return new Int32Array(4);
}

/** Mixes a word so that neighbours share no pattern. @see C. Wellons, lowbias32, hash-prospector (2018), from memory */
function mix(h: number): number {
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return h ^ (h >>> 16);
}

/** Starts the stream of one atom. All three are whole numbers, of which 32 bits count. */
export function keyInto(random: Random, seed: number, chunk: number, atom: number): void {
  let h = mix(seed ^ 0x9e3779b9);
  h = mix(h ^ Math.imul(chunk + 1, 0x85ebca6b));
  h = mix(h ^ Math.imul(atom + 1, 0xc2b2ae35));
  const g = mix((h + 0x632be5ab) ^ mix(chunk ^ Math.imul(seed, 0x27d4eb2f))) ^ mix(atom + 0x165667b1);
  random[0] = h;
  random[1] = g;
  random[2] = mix(h + 0x3c6ef372);
  random[3] = mix(g + 0x78dde6e5) | 1; // never all zero
}

/** The next word of the stream, 32 bits with a sign. */
export function nextWord(random: Random): number {
  const a = random[0]!;
  const b = random[1]!;
  const c = random[2]! ^ a;
  const d = random[3]!;
  const sum = (a + d) | 0;
  const e = d ^ b;
  random[0] = a ^ e;
  random[1] = b ^ c;
  random[2] = c ^ (b << 9);
  random[3] = (e << 11) | (e >>> 21);
  return (((sum << 7) | (sum >>> 25)) + a) | 0;
}

/** A number drawn evenly from the open interval 0 to 1, in steps of 2⁻³². */
export function uniform(random: Random): number {
  return ((nextWord(random) >>> 0) + 0.5) * 2 ** -32;
}
