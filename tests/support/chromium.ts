/** Finds a Chromium: CHROMIUM_PATH, one on the system, or the one inside an npm package, unpacked to .cache/. */
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const ON_SYSTEM = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--no-first-run',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--enable-unsafe-swiftshader',
];

/**
 * Path of a Chromium that can be started.
 *
 * @throws Error that says what to install if there is none
 */
export async function findChromium(): Promise<string> {
  const asked = process.env['CHROMIUM_PATH'];
  if (asked !== undefined) {
    if (existsSync(asked)) return asked;
    throw new Error(`CHROMIUM_PATH names ${asked}, which is not there. Unset it, or point it at a Chromium or Chrome.`);
  }
  const found = ON_SYSTEM.find((path) => existsSync(path));
  return found ?? unpackPackaged();
}

async function unpackPackaged(): Promise<string> {
  try {
    const about = join(ROOT, 'node_modules/@sparticuz/chromium/package.json');
    const { version } = JSON.parse(readFileSync(about, 'utf8')) as { version: string };
    const folder = join(ROOT, '.cache', `chromium-${version}`);
    mkdirSync(folder, { recursive: true });
    process.env['TMPDIR'] = folder; // the package unpacks into the system's temporary folder
    const { default: chromium } = await import('@sparticuz/chromium');
    return await chromium.executablePath();
  } catch (cause) {
    throw new Error(
      'The browser tests need a Chromium and found none. Install one (Debian: apt-get install chromium; others: Chrome ' +
        'or Chromium) and, if it is in an unusual place, set CHROMIUM_PATH to it.',
      { cause },
    );
  }
}
