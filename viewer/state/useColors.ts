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
/** on paper all is black on white, whatever the theme */
const printing = window.matchMedia('print');

/** Tells of all: the system's theme, the user's choice on the document, and paper. */
function subscribe(onChange: () => void): () => void {
  const chosen = new MutationObserver(onChange);
  chosen.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  darkTheme.addEventListener('change', onChange);
  printing.addEventListener('change', onChange);
  return () => {
    chosen.disconnect();
    darkTheme.removeEventListener('change', onChange);
    printing.removeEventListener('change', onChange);
  };
}

const themeInUse = (): string =>
  `${document.documentElement.dataset['theme'] ?? 'system'} ${darkTheme.matches} ${printing.matches}`;

/** Resolves the properties by having an element wear them: they may depend on the theme. */
function readColors(): Colors {
  const wearer = document.body.appendChild(document.createElement('span'));
  const colors = NAMES.map((name) => {
    wearer.style.color = `var(--${name})`;
    return [name, getComputedStyle(wearer).color];
  });
  wearer.remove();
  return Object.fromEntries(colors) as Colors;
}

export function useColors(): Colors {
  const theme = useSyncExternalStore(subscribe, themeInUse);
  return useMemo(() => ({ theme, ...readColors() }), [theme]);
}
