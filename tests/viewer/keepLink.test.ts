import { inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { deflateSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { openPlant, openPlantFile, type DesignFile } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import {
  linkRemark,
  LONG_LINK,
  MAX_LINK,
  MAX_UNPACKED,
  packFragment,
  unpackFragment,
} from '../../viewer/state/keep/designLink.ts';
import { carriesDesign, LINK_KEY } from '../../viewer/state/keep/linkKey.ts';
import { embedFiles } from '../../viewer/state/keep/embedFiles.ts';
import { validDesign } from '../engine/design/validDesigns.ts';
import { cubeStl } from '../support/stl.ts';

const SEED = 20_260_102;
/** A few bits of a deflated text mean nothing: lengths of unused codes, and what fills up the last byte. */
const ALMOST_ALL = 0.99;
const base = presets[0]!.file;

/** What a fragment carries, or its message. */
const unpacked = (fragment: string): string => {
  const result = unpackFragment(fragment);
  return result.ok ? result.text : result.message;
};

describe('a link', () => {
  test('gives back every valid design, which opens again', () => {
    fc.assert(
      fc.property(validDesign, (design) => {
        const text = JSON.stringify(design);
        const fragment = packFragment(text);
        expect(fragment).toMatch(/^#d=[\w-]+$/);
        expect(unpacked(fragment)).toBe(text);
        const opened = openPlant(unpacked(fragment));
        expect(opened.ok && opened.file).toEqual(JSON.parse(text)); // JSON knows no −0
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('gives back any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(unpacked(packFragment(text))).toBe(text);
      }),
      { seed: SEED },
    );
  });

  test('is base64url over deflate, as another library reads it', () => {
    const text = JSON.stringify(base);
    const bytes = Buffer.from(packFragment(text).slice(LINK_KEY.length), 'base64url');
    expect(inflateRawSync(bytes.subarray(4)).toString('utf8')).toBe(text);
  });

  test('of a preset is short enough for any program', () => {
    for (const { file } of presets) expect(packFragment(JSON.stringify(file)).length).toBeLessThan(LONG_LINK);
  });
});

describe('a broken link', () => {
  const fragment = packFragment(JSON.stringify(base));

  test('is refused wherever it is cut', () => {
    for (let length = 0; length < fragment.length; length += 7)
      expect(unpackFragment(fragment.slice(0, length)).ok, String(length)).toBe(false);
    expect(unpackFragment(fragment.slice(0, -1)).ok).toBe(false);
  });

  test('with any one character changed is refused, or gives the same text', () => {
    let refused = 0;
    for (let at = LINK_KEY.length; at < fragment.length; at++) {
      const other = fragment[at] === 'A' ? 'B' : 'A';
      const result = unpackFragment(fragment.slice(0, at) + other + fragment.slice(at + 1));
      if (result.ok) expect(result.text).toBe(JSON.stringify(base));
      else refused++;
    }
    expect(refused / (fragment.length - LINK_KEY.length)).toBeGreaterThan(ALMOST_ALL);
  });

  test.each(['', '#', '#d=', '#d=!!!', '#d=AAAA', '#d=%20', '#d=====', '#layout', '#d=AAAAAAAA'])(
    'is refused: "%s"',
    (text) => {
      expect(unpacked(text)).toMatch(/^expected a link with a whole design/);
    },
  );

  test('that grows without end is refused before it fills the memory', () => {
    const bomb = deflateSync(new Uint8Array(MAX_UNPACKED * 8), { level: 9 });
    const bytes = Buffer.concat([Buffer.alloc(4), bomb]);
    expect(bytes.length).toBeLessThan(MAX_UNPACKED / 50);
    const before = process.memoryUsage().arrayBuffers;
    expect(unpacked(LINK_KEY + bytes.toString('base64url'))).toMatch(/^expected at most 16 MB in a link; found more/);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(MAX_UNPACKED * 4);
  });

  test('is told apart from other fragments', () => {
    expect(carriesDesign(fragment)).toBe(true);
    expect(carriesDesign('#layout')).toBe(false);
  });
});

describe('the files that a design names', () => {
  const csv = 'name,x,y,z\n,m,m,m\nä1,0.1,0.2,0.9\nb2,-0.1,0.2,0.9\n';
  const stl = cubeStl([0.05, 0.05, 0.05]);
  const named = {
    ...base,
    filaments: [{ arrangement: 'list', name: 'listed', type: Object.keys(base.filamentTypes)[0]!, file: 'list.csv' }],
    obstacles: [{ shape: 'mesh', name: 'box', file: 'box.stl', unit: 'm', position: ['0 m', '0 m', '0.4 m'] }],
  } as DesignFile;
  const open = (bytes: Uint8Array<ArrayBuffer>) =>
    openPlantFile(
      named,
      new Map([
        ['list.csv', bytes],
        ['box.stl', stl],
      ]),
    );

  test.each([
    ['UTF-8', new TextEncoder().encode(csv)],
    ['UTF-8 with a byte order mark', new TextEncoder().encode(`\uFEFF${csv}`)],
    ['Latin-1', Uint8Array.from(csv, (sign) => sign.charCodeAt(0))],
  ])('go into the link, and the plant is the same: %s', (_name, bytes) => {
    const alone = open(bytes);
    if (!alone.ok) throw new Error(JSON.stringify(alone.problems));
    const files = new Map([
      ['list.csv', bytes],
      ['box.stl', stl],
    ]);
    const embedded = embedFiles(named, files);
    expect(JSON.stringify(embedded)).not.toContain('"file"');
    const linked = openPlant(unpacked(packFragment(JSON.stringify(embedded))));
    if (!linked.ok) throw new Error(JSON.stringify(linked.problems));
    expect(linked.plant.filaments).toEqual(alone.plant.filaments);
    expect(linked.plant.meshes).toEqual(alone.plant.meshes);
  });

  test('leave a design alone that names none', () => {
    expect(embedFiles(base, new Map())).toBe(base);
  });
});

describe('the remark about a link', () => {
  test('says how long it is, and warns of cutting and of what no browser opens', () => {
    expect(linkRemark(2140)).toEqual({
      text: '2,140 characters, with the whole design in them.',
      isLong: false,
      fits: true,
    });
    expect(linkRemark(LONG_LINK).isLong).toBe(false);
    expect(linkRemark(LONG_LINK + 1)).toMatchObject({ isLong: true, fits: true });
    expect(linkRemark(LONG_LINK + 1).text).toMatch(/Some programs cut links this long/);
    expect(linkRemark(MAX_LINK + 1)).toMatchObject({ isLong: true, fits: false });
  });
});
