/** What the user chose to see in the picture, beside the coat. */
import { create } from 'zustand';

export interface SceneOptions {
  /** whether filaments show their feeds by colour and number */
  readonly showsFeeds: boolean;
  /** whether lines lead from the probe to the filaments that feed it */
  readonly showsPaths: boolean;
}

export const useSceneOptions = create<SceneOptions>(() => ({ showsFeeds: false, showsPaths: false }));

/** Changes some of the options. */
export function setSceneOptions(options: Partial<SceneOptions>): void {
  useSceneOptions.setState(options);
}
