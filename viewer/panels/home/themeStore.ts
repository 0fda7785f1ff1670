/** Light, dark, or as the system has it: remembered, and written to <html data-theme> for the style sheet. */
import { create } from 'zustand';
import { persist } from 'zustand/middleware';

export const THEMES = ['system', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];

interface ThemeState {
  readonly theme: Theme;
}

export const useTheme = create<ThemeState>()(
  persist((): ThemeState => ({ theme: 'system' }), {
    name: 'evenfall-theme',
    merge: (kept, state) => {
      const theme = (kept as Partial<ThemeState> | undefined)?.theme;
      return theme && THEMES.includes(theme) ? { theme } : state;
    },
  }),
);

export function setTheme(theme: Theme): void {
  useTheme.setState({ theme });
}

function show({ theme }: ThemeState): void {
  const { dataset } = document.documentElement;
  if (theme === 'system') delete dataset['theme'];
  else dataset['theme'] = theme;
}

/** Keeps the page in the chosen theme; to be called before the first paint. Returns how to end that. */
export function followTheme(): () => void {
  show(useTheme.getState());
  return useTheme.subscribe(show);
}
