/** A part of the picture: made once, brought up to date with each picture. */
import type { Object3D } from 'three';
import type { Picture } from '../picture.ts';

export interface ScenePart {
  readonly object: Object3D;
  /** writes what has changed into the buffers that are there */
  readonly update: (picture: Picture) => void;
  readonly dispose: () => void;
}
