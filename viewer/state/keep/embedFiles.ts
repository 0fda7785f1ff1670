/** Puts the files that a design names into the design itself, so that it stands alone. */
import type { DesignFile, NamedFiles } from '../../../engine/index.ts';

type Bytes = Uint8Array<ArrayBuffer>;

/** Bytes as UTF-8 text; where they are not UTF-8, one character a byte, as the engine reads them. */
function textOf(bytes: Bytes): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return latinText(bytes);
  }
}

/** One character a byte; in pieces, since a call takes only so many arguments. */
function latinText(bytes: Bytes): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) pieces.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return pieces.join('');
}

/** Replaces the key `file` in its place by another one. */
function replaced(part: object, key: string, value: string): object {
  return Object.fromEntries(Object.entries(part).map(([name, old]) => (name === 'file' ? [key, value] : [name, old])));
}

/** The part with its file inside under a key, or as it is if it names none. */
function embedded<P extends object>(part: P, key: string, files: NamedFiles, write: (bytes: Bytes) => string): P {
  const bytes = 'file' in part && typeof part.file === 'string' ? files.get(part.file) : undefined;
  return bytes ? (replaced(part, key, write(bytes)) as P) : part;
}

/** The same design with filament tables as text and meshes as base64; the given file stays as it was. */
export function embedFiles(file: DesignFile, files: NamedFiles): DesignFile {
  if (files.size === 0) return file;
  return {
    ...file,
    filaments: file.filaments.map((set) => embedded(set, 'csv', files, textOf)),
    ...(file.obstacles && {
      obstacles: file.obstacles.map((obstacle) => embedded(obstacle, 'data', files, (bytes) => btoa(latinText(bytes)))),
    }),
  };
}
