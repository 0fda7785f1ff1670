/** The page's colours for canvases: the custom properties of styles.css, resolved for the theme in use. */
import { useMemo, useSyncExternalStore } from 'react';

const NAMES = [
  'text',
  'text-2',
  'line',
  'accent',
  'surface-1',
  'scene-wall',
  'scene-edge',
  'scene-glass',
  'scene-solid',
  'scene-coil',
  'scene-idle',
  'scene-mark',
] as const;

export type Colors = Readonly<Record<(typeof NAMES)[number], string>>;

const darkTheme = window.matchMedia('(prefers-color-scheme: dark)');

function subscribe(onChange: () => void): () => void {
  darkTheme.addEventListener('change', onChange);
  return () => darkTheme.removeEventListener('change', onChange);
}

function readColors(): Colors {
  const style = getComputedStyle(document.documentElement);
  return Object.fromEntries(NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()])) as Colors;
}

export function useColors(): Colors {
  const isDark = useSyncExternalStore(subscribe, () => darkTheme.matches);
  return useMemo(() => ({ isDark, ...readColors() }), [isDark]);
}
