/** How files of variants are told from others. */

export const ENDING = '.variants.json';

/** Whether a file is one of variants, told by its name. */
export function isVariantsFile({ name }: { readonly name: string }): boolean {
  return name.toLowerCase().endsWith(ENDING);
}
