/** The lessons in their order. */
import type { AnyLesson } from '../lesson.ts';
import { straightLines } from './01StraightLines.tsx';
import { raisePressure } from './02RaisePressure.tsx';
import { freePath } from './03FreePath.tsx';
import { thinEdge } from './04ThinEdge.tsx';
import { rings } from './05Rings.tsx';
import { shadow } from './06Shadow.tsx';
import { dirtyGas } from './07DirtyGas.tsx';
import { waitOrFire } from './08WaitOrFire.tsx';
import { failed } from './09Failed.tsx';
import { scale } from './10Scale.tsx';

export const lessons: readonly AnyLesson[] = [
  straightLines,
  raisePressure,
  freePath,
  thinEdge,
  rings,
  shadow,
  dirtyGas,
  waitOrFire,
  failed,
  scale,
];
