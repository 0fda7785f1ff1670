/** Puts the SIMD kernel in the place of the readable one, so that the ladder of tests is climbed on it as well. */
import { fileURLToPath } from 'node:url';

const KERNEL = fileURLToPath(new URL('../../engine/transport/depositKernel.ts', import.meta.url));
const STAND_IN = fileURLToPath(new URL('./simdInPlace.ts', import.meta.url));

interface Resolver {
  resolve(source: string, importer: string, options: { skipSelf: boolean }): Promise<{ id: string } | null>;
}

export const simdLadder = {
  name: 'simd-ladder',
  enforce: 'pre' as const,
  async resolveId(this: Resolver, source: string, importer: string | undefined) {
    if (!source.endsWith('/depositKernel.ts') || importer === undefined) return null;
    const isOwn = importer.startsWith(STAND_IN) || importer.includes('/transport/simd/');
    const found = await this.resolve(source, importer, { skipSelf: true });
    return found?.id === KERNEL && !isOwn ? STAND_IN : null;
  },
};
