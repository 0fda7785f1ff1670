/** Runs a bench module that needs nothing of Node inside headless Chromium. */
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';
import { createServer } from 'vite';
import { CHROMIUM_ARGS, findChromium } from '../support/chromium.ts';
import type { Row } from './row.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** The rows that `name` of the module at `path`, beside this file, gives when it runs in a page. */
export async function rowsInChromium(path: string, name: string): Promise<Row[]> {
  const server = await createServer({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    appType: 'custom',
    cacheDir: '.cache/vite',
    optimizeDeps: { entries: [`tests/bench/${path}`, 'workers/browserWorker.ts'] },
    server: { port: 0, host: '127.0.0.1', hmr: false, watch: null },
  });
  await server.listen();
  const browser = await chromium.launch({ executablePath: await findChromium(), args: CHROMIUM_ARGS });
  try {
    const page = await browser.newPage();
    const home = server.resolvedUrls!.local[0]!;
    await page.route(home, async (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }));
    await page.goto(home);
    const address = new URL(path, `${home}tests/bench/`).href;
    const rows = await page.evaluate(
      async ([from, called]): Promise<Row[]> => {
        const bench = (await import(from)) as Record<string, () => Row[] | Promise<Row[]>>;
        return bench[called]!();
      },
      [address, name] as const,
    );
    return rows.map(({ what, figure, goal }) => ({ what: `Chromium: ${what}`, figure, goal }));
  } finally {
    await browser.close();
    await server.close();
  }
}
