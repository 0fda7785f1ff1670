/** Chooses the theme. */
import { Monitor, Moon, Sun } from 'lucide-react';
import './home.css';
import { setTheme, THEMES, useTheme } from './themeStore.ts';

const SIGNS = { system: Monitor, light: Sun, dark: Moon } as const;
const WORDS = { system: 'As the system', light: 'Light', dark: 'Dark' } as const;

export function ThemeSwitch() {
  const theme = useTheme((state) => state.theme);
  return (
    <fieldset className="theme-switch">
      <legend className="visually-hidden">Theme</legend>
      {THEMES.map((item) => {
        const Sign = SIGNS[item];
        return (
          <label key={item} title={WORDS[item]}>
            <input
              type="radio"
              name="theme"
              className="visually-hidden"
              aria-label={WORDS[item]}
              checked={theme === item}
              onChange={() => setTheme(item)}
            />
            <Sign aria-hidden="true" size={16} />
          </label>
        );
      })}
    </fieldset>
  );
}
