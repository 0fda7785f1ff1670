/** Opens a design file from disk, with the files that it names beside it. */
import { readFile, stat } from 'node:fs/promises';
import { dirname, isAbsolute, join, normalize } from 'node:path';
import { namedFiles, openPlant, type OpenedPlant, type Problem } from '../../engine/index.ts';

/** Larger files are not read at all, bytes: an STL file of two million triangles has 100 MB. */
const MAX_BYTES = 128_000_000;

/** End of the message for a missing file; for one beside the design, the engine says at which path it is named. */
const NOT_THERE = 'is not there';

/** The plant in a file, or everything wrong with it; a missing file is such a problem. */
export async function readDesign(path: string): Promise<OpenedPlant> {
  const bytes = await readBounded(path);
  if ('message' in bytes) return { ok: false, problems: [bytes] };
  const text = new TextDecoder().decode(bytes);
  const files = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const name of namesIn(text)) {
    if (isAbsolute(name) || normalize(name).startsWith('..')) continue; // only beside the design; reported as not there
    const content = await readBounded(join(dirname(path), name));
    if (!('message' in content)) files.set(name, content);
    else if (!content.message.endsWith(NOT_THERE)) return { ok: false, problems: [content] };
  }
  return openPlant(text, files);
}

function namesIn(text: string): string[] {
  try {
    return namedFiles(JSON.parse(text));
  } catch {
    return []; // not JSON: openPlant says where
  }
}

async function readBounded(path: string): Promise<Uint8Array<ArrayBuffer> | Problem> {
  try {
    const about = await stat(path);
    if (!about.isFile()) return { path: '', message: `expected a file; "${path}" is something else` };
    if (about.size > MAX_BYTES)
      return {
        path: '',
        message: `expected a file of at most ${MAX_BYTES / 1e6} MB; "${path}" has ${Math.ceil(about.size / 1e6)} MB`,
      };
    return new Uint8Array(await readFile(path));
  } catch (error) {
    const reason =
      error instanceof Error && 'code' in error && error.code === 'ENOENT' ? 'is not there' : 'cannot be read';
    return { path: '', message: `the file "${path}" ${reason}` };
  }
}
