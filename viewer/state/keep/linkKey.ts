/** How the fragment of a link that carries a design starts. */
export const LINK_KEY = '#d=';

/** Whether a fragment carries a design. */
export function carriesDesign(fragment: string): boolean {
  return fragment.startsWith(LINK_KEY);
}
