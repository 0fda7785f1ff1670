/** Places what opens from a button under it. */

/** Between the button and what opens from it, and to the edge of the window, px. */
const GAP = 4;
const MARGIN = 8;

/** Puts an open popover under its button, right edges aligned, within the window. */
export function placeUnder(popover: HTMLElement, button: HTMLElement): void {
  const { right, bottom } = button.getBoundingClientRect();
  const left = Math.max(MARGIN, Math.min(right, window.innerWidth - MARGIN) - popover.offsetWidth);
  popover.style.left = `${left}px`;
  popover.style.top = `${bottom + GAP}px`;
  popover.style.maxHeight = `${window.innerHeight - bottom - GAP - MARGIN}px`;
}
