/** Where the charge of a filament comes from. */
import type { TypeFile } from './parts.ts';

/** Whether a type says what its filaments carry, so that a set need not. */
export function typeHasCharge(type: TypeFile | undefined): boolean {
  return type?.charge !== undefined || type?.clipMass !== undefined;
}
