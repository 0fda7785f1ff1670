/** Brings the code of stages, and remembers what has come. */
import type { ComponentType } from 'react';
import type { Stage } from './stages.ts';

const come = new Map<string, ComponentType>();

/** The component of a stage; rejects if it cannot be loaded. */
export async function loadStage({ key, load }: Stage): Promise<ComponentType> {
  const component = await load();
  come.set(key, component);
  return component;
}

/** The component of a stage if it has come already: then nothing needs to stand in for it. */
export function loadedStage({ key }: Stage): ComponentType | undefined {
  return come.get(key);
}
