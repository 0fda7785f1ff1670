/** Builds the service worker and tells it every file of the page. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const SOURCE = fileURLToPath(new URL('serviceWorker.ts', import.meta.url));
const MARK = '__PRECACHE__';
const WORKER = 'sw.js';

/** The files of the public folder, which the build copies as they are. */
function publicFiles(folder: string): [string, string | Uint8Array][] {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true });
  return names
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => [path.slice(folder.length + 1).replaceAll('\\', '/'), readFileSync(path)]);
}

/** One sum over names and contents: any change is a new version. */
function versionOf(files: readonly (readonly [string, string | Uint8Array])[]): string {
  const hash = createHash('sha256');
  for (const [name, content] of files) hash.update(name).update('\0').update(content).update('\0');
  return hash.digest('hex').slice(0, 16);
}

export function precachePlugin(): Plugin {
  let publicDir = '';
  return {
    name: 'precache',
    apply: 'build',
    enforce: 'post',
    configResolved: (config) => {
      publicDir = config.publicDir;
    },
    buildStart() {
      this.emitFile({ type: 'chunk', id: SOURCE, fileName: WORKER });
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const worker = bundle[WORKER];
        if (worker?.type !== 'chunk') throw new Error(`expected the chunk ${WORKER} in the build; found none`);
        if (worker.imports.length > 0) throw new Error(`${WORKER} must stand alone; it imports ${worker.imports[0]}`);
        const built = Object.values(bundle)
          .filter((output) => output !== worker)
          .map((output): [string, string | Uint8Array] => [
            output.fileName,
            output.type === 'chunk' ? output.code : output.source,
          ]);
        const files = [...built, ...publicFiles(publicDir)].toSorted(([a], [b]) => (a < b ? -1 : 1));
        const version = versionOf([...files, [WORKER, worker.code]]);
        const list = JSON.stringify({ version, files: files.map(([name]) => name) });
        if (!worker.code.includes(MARK)) throw new Error(`expected ${MARK} in ${WORKER}; found none`);
        worker.code = worker.code.replaceAll(MARK, list);
      },
    },
  };
}
