/** Kinds of file that leave the page. */

export const KINDS = {
  png: { mimeType: 'image/png', description: 'Picture' },
  svg: { mimeType: 'image/svg+xml', description: 'Drawing' },
  csv: { mimeType: 'text/csv', description: 'Table' },
  html: { mimeType: 'text/html', description: 'Page' },
  glb: { mimeType: 'model/gltf-binary', description: '3D scene' },
} as const;

export type FileKind = keyof typeof KINDS;

/** A text as a file of a kind. */
export function textFile(text: string, kind: FileKind): Blob {
  return new Blob([text], { type: `${KINDS[kind].mimeType};charset=utf-8` });
}
