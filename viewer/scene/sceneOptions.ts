/** What the user chose to see in the picture, beside the coat. */
import { create } from 'zustand';

export interface SceneOptions {
  /** whether filaments show their feeds by colour and number */
  readonly showsFeeds: boolean;
  /** whether lines lead from the probe to the filaments that feed it */
  readonly showsPaths: boolean;
  /** whether an automatic range of colours begins at zero */
  readonly fromZero: boolean;
}

export const useSceneOptions = create<SceneOptions>(() => ({ showsFeeds: false, showsPaths: false, fromZero: false }));

/** Changes some of the options. */
export function setSceneOptions(options: Partial<SceneOptions>): void {
  useSceneOptions.setState(options);
}
