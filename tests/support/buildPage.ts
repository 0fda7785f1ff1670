/** Builds the page once before the tests, so that the browser tests run what users get. */
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

export default async function buildPage(): Promise<void> {
  await build({ configFile: fileURLToPath(new URL('../../viewer/vite.config.ts', import.meta.url)), logLevel: 'warn' });
}
