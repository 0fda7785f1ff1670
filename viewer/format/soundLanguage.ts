/**
 * Some browsers on servers call their language "en-US@posix", which Intl refuses. The chart library
 * asks Intl while it is loaded, so this file is imported before it.
 */
function isSound(language: string): boolean {
  try {
    return Intl.getCanonicalLocales(language).length > 0;
  } catch {
    return false;
  }
}

if (typeof navigator !== 'undefined' && !isSound(navigator.language))
  Object.defineProperty(navigator, 'language', { value: 'en' });
