/** Builds the page once before the tests, so that the browser tests run what users get. */
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

export default async function buildPage(): Promise<void> {
  // the test runner sets "test", which would build the libraries' development versions into the page
  process.env['NODE_ENV'] = 'production';
  await build({
    configFile: fileURLToPath(new URL('../../viewer/vite.config.ts', import.meta.url)),
    mode: 'production',
    logLevel: 'error',
  });
}
