import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';

const PUBLIC = new URL('../../viewer/public/', import.meta.url);

interface Manifest {
  readonly start_url: string;
  readonly scope: string;
  readonly icons: readonly { readonly src: string; readonly type: string; readonly sizes: string }[];
}
const manifest = JSON.parse(readFileSync(new URL('manifest.webmanifest', PUBLIC), 'utf8')) as Manifest;

describe('the manifest', () => {
  test('names only addresses inside the folder that the page is served from', () => {
    for (const address of [manifest.start_url, manifest.scope, ...manifest.icons.map(({ src }) => src)])
      expect(new URL(address, 'http://host/some/folder/').href).toMatch(/^http:\/\/host\/some\/folder\//);
  });

  test('has the two sizes of icons that installing asks for, each as large as it says', () => {
    const pngs = manifest.icons.filter(({ type }) => type === 'image/png');
    expect(pngs.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(['192x192', '512x512']));
    for (const { src, sizes } of pngs) {
      const { width, height } = PNG.sync.read(readFileSync(new URL(src, PUBLIC)));
      expect(`${width}x${height}`).toBe(sizes);
    }
  });
});
