/** How vapour leaves a source: intensity against direction, for one kilogram evaporated. */
import { ellipticE } from './ellipticE.ts';
import { tableIntensity, type EmissionTable } from './emissionTable.ts';

/**
 * The laws of emission, each 1 over the sphere. The axis is the coil axis for wire and coil, the
 * aimed direction for the cosine power.
 */
export type EmissionLaw =
  | { readonly kind: 'isotropic' }
  | { readonly kind: 'cosine'; readonly power: number }
  | { readonly kind: 'wire' }
  | { readonly kind: 'coil' }
  | { readonly kind: 'table'; readonly table: EmissionTable };

/**
 * Emitted share per steradian.
 *
 *     isotropic     1/4π
 *     cosine power  (n+1)/2π · max(0, cosφ)ⁿ
 *     wire          sinθ/π²                     (Lambert's law on a cylinder)
 *     coil          (2/π³) E(sin²θ)             (Lambert's law on the wire, averaged over the turns)
 *     table         measured, linear in the angle
 *
 * This is the readable reference; the kernels in transport/ compute the same without the division by r.
 *
 * @param cosEmit [1] cosine of the angle between direction and axis
 * @returns [1/sr]
 * @see L. Holland, Vacuum Deposition of Thin Films (1956), for the first three (from memory)
 */
export function emittedIntensity(law: EmissionLaw, cosEmit: number): number {
  switch (law.kind) {
    case 'isotropic':
      return 1 / (4 * Math.PI);
    case 'cosine':
      if (law.power === 0) return cosEmit > 0 ? 1 / (2 * Math.PI) : 0;
      return ((law.power + 1) / (2 * Math.PI)) * Math.max(0, cosEmit) ** law.power;
    case 'wire':
      return Math.sqrt(Math.max(0, 1 - cosEmit * cosEmit)) / Math.PI ** 2;
    case 'coil':
      return (2 / Math.PI ** 3) * ellipticE(Math.min(1, cosEmit * cosEmit));
    case 'table':
      return tableIntensity(law.table, cosEmit);
  }
}
