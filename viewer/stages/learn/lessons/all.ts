/** The lessons in their order. */
import type { AnyLesson } from '../lesson.ts';
import { thinEdge } from './04ThinEdge.tsx';
import { rings } from './05Rings.tsx';
import { shadow } from './06Shadow.tsx';
import { failed } from './09Failed.tsx';
import { scale } from './10Scale.tsx';

export const lessons: readonly AnyLesson[] = [thinEdge, rings, shadow, failed, scale];
