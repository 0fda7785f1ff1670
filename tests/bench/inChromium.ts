/** Runs a bench module of pure engine code inside headless Chromium. */
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';
import { build, type Rollup } from 'vite';
import { CHROMIUM_ARGS, findChromium } from '../support/chromium.ts';
import type { Row } from './row.ts';

/** A module's exports as one script that leaves them in a global. */
async function bundle(path: string): Promise<string> {
  const built = (await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      target: 'es2023',
      lib: { entry: fileURLToPath(new URL(path, import.meta.url)), formats: ['iife'], name: 'bench' },
    },
  })) as Rollup.RollupOutput[];
  return built[0]!.output[0].code;
}

/** The rows that `name` of the module at `path`, beside this file, gives when it runs in the browser's main thread. */
export async function rowsInChromium(path: string, name: string): Promise<Row[]> {
  const script = await bundle(path);
  const browser = await chromium.launch({ executablePath: await findChromium(), args: CHROMIUM_ARGS });
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: script });
    const rows = await page.evaluate(async (called): Promise<Row[]> => {
      const { bench } = globalThis as unknown as { bench: Record<string, () => Row[] | Promise<Row[]>> };
      return bench[called]!();
    }, name);
    return rows.map(({ what, figure, goal }) => ({ what: `Chromium: ${what}`, figure, goal }));
  } finally {
    await browser.close();
  }
}
