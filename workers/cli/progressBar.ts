/** A one-line progress bar on standard error, where that is a terminal. */
import type { Control } from '../../engine/index.ts';

const WIDTH = 32;

/** Draws the share done over the same line; `end` wipes it. Does nothing where standard error is not a terminal. */
export function progressBar(stream: NodeJS.WriteStream = process.stderr): {
  readonly control: Control;
  readonly end: () => void;
} {
  const isShown = stream.isTTY;
  return {
    control: {
      step: (share) => {
        if (!isShown) return;
        const filled = Math.round(WIDTH * Math.min(1, share));
        stream.write(
          `\r[${'#'.repeat(filled)}${'.'.repeat(WIDTH - filled)}] ${String(Math.round(100 * share)).padStart(3)} %`,
        );
      },
    },
    end: () => {
      if (isShown) stream.write(`\r${' '.repeat(WIDTH + 8)}\r`);
    },
  };
}
