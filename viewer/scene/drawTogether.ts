/** When a changed picture is drawn: together with the coat that follows an edit, which halves the drawing. */
import { PATIENCE } from '../state/resultStore.ts';
import type { Picture } from './picture.ts';

export interface Drawer {
  readonly follow: (picture: Picture) => void;
  readonly stop: () => void;
}

/** @param draw asks for a frame */
export function drawTogether(draw: () => void): Drawer {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const stop = (): void => {
    clearTimeout(waiting);
    waiting = undefined;
  };
  const drawNow = (): void => {
    stop();
    draw();
  };
  const follow = ({ plant, coat }: Picture): void => {
    if (plant !== coat.plant) waiting ??= setTimeout(drawNow, PATIENCE);
    else drawNow();
  };
  return { follow, stop };
}
