/** Stands for engine/transport/depositKernel.ts where the ladder is climbed on the SIMD kernel: see simdLadder.ts. */
import type { DepositKernel } from '../../engine/transport/depositKernel.ts';
import { createSimdKernel } from '../../engine/transport/simd/simdKernel.ts';

export { markCutInto, MIXES, RUN, singleError, type DepositKernel } from '../../engine/transport/depositKernel.ts';

export function createPlainKernel(): DepositKernel {
  const kernel = createSimdKernel();
  if (!kernel) throw new Error('this machine runs no SIMD');
  return kernel;
}
