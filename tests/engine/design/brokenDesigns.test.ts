import { describe, expect, test } from 'vitest';
import { formatProblem, namedFiles, openPlant, openPlantFile, type OpenedPlant } from '../../../engine/index.ts';
import { MAX_PROBLEMS } from '../../../engine/design/problem.ts';
import { editedDesign } from './baseDesign.ts';
import { BROKEN_DESIGNS, bytesOf } from './brokenDesigns.ts';
import { FINE_DESIGNS } from './fineDesigns.ts';

/** s; the largest entries are 50 MB, and a person waits for the answer. */
const MOST_SECONDS = 2;

/** Longest sentence, characters: three lines of a panel. */
const LONGEST_MESSAGE = 320;

function pathsAndMessages(opened: OpenedPlant): string[] {
  return opened.ok ? [] : opened.problems.map(formatProblem);
}

describe('a broken design', () => {
  test.each(BROKEN_DESIGNS.map((design) => [design.name, design] as const))('%s is refused', (_name, design) => {
    const text = design.text();
    const files = bytesOf(design.files);
    const start = performance.now();
    const opened = openPlant(text, files);
    const seconds = (performance.now() - start) / 1000;
    const problems = opened.ok ? [] : opened.problems;
    expect(problems.filter(({ path }) => path === design.path).map(({ message }) => message)).toContainEqual(
      expect.stringContaining(design.message),
    );
    expect(seconds).toBeLessThan(MOST_SECONDS);
    expect(problems.length).toBeLessThanOrEqual(MAX_PROBLEMS + 1);
    for (const { message } of problems) expect(message.length).toBeLessThanOrEqual(LONGEST_MESSAGE);
  });

  test('has a name of its own in the collection', () => {
    const names = BROKEN_DESIGNS.map(({ name }) => name);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  test('names the files that it needs, so that a caller can fetch them', () => {
    const withFiles = BROKEN_DESIGNS.filter(({ files }) => Object.keys(files ?? {}).length > 0);
    expect(withFiles.length).toBeGreaterThan(5);
    for (const { text, files } of withFiles) expect(namedFiles(JSON.parse(text()))).toEqual(Object.keys(files ?? {}));
  });
});

describe('a fine design', () => {
  test.each(FINE_DESIGNS.map((design) => [design.name, design] as const))('%s opens', (_name, design) => {
    expect(pathsAndMessages(openPlant(design.text(), bytesOf(design.files)))).toEqual([]);
  });
});

test('faults in different parts of a file are all reported at once, misfits among them', () => {
  const opened = openPlantFile(
    editedDesign({
      name: '',
      'mirror.holeDiamter': '0.4 m',
      'tank.colour': 'grey',
      'filamentTypes.coil.clipMass': '67 mm',
      'filamentTypes.boat.emission.law': 'sine',
      'filamentTypes.hairpin.loops': 3,
      'filaments[0].axis': [0, 0, 0],
      'filaments[2].exceptions': [{ filament: 9 }],
      'filaments[3].filaments[0].position': ['0 m', '0 m', '0.2 m'],
      'filaments[3].filaments[1].position': ['0 m', '2 m', '0.2 m'],
      'obstacles[0].to': ['0 m', '0 m', '0.1 m'],
      'obstacles[1].name': 'plug',
      'witnesses[0].radius': '9 m',
      'witnesses[1].name': 'W1',
      'vacuum.pressure': '0 Pa',
      'film.tolerance': 10,
    }),
  );
  // the mirror and the tank are broken in form, so that nothing can be placed: positions are judged below
  expect(opened.ok ? [] : opened.problems.map(({ path }) => path).toSorted()).toEqual([
    'filamentTypes.boat.emission.law',
    'filamentTypes.coil.clipMass',
    'filamentTypes.hairpin.loops',
    'filaments[0].axis',
    'filaments[2].exceptions[0].filament',
    'film.tolerance',
    'mirror',
    'name',
    'obstacles[0].to',
    'obstacles[1].name',
    'tank',
    'vacuum.pressure',
    'witnesses[1].name',
  ]);
});

test('a fault of form in one part hides no misplaced thing in another', () => {
  const opened = openPlantFile(
    editedDesign({
      name: 7,
      story: [],
      'filamentTypes.coil.clipMass': '67',
      'filaments[1].to': ['9 m', '0 m', '1 m'],
      'filaments[2].center': ['0 m', '0 m', '0 m'],
      'filaments[2].spacing': ['1 m', '1 m'],
      'filaments[3].filaments[0].position': ['0 m', '0 m', '0.2 m'],
      'filaments[3].filaments[1].position': ['0 m', '2 m', '0.2 m'],
      'obstacles[2].innerDiameter': '9 m',
      'witnesses[0].radius': '9 m',
      'witnesses[1].position': ['0 m', '0 m', '-9 m'],
      'film.density': '2700',
    }),
  );
  expect(opened.ok ? [] : opened.problems.map(({ path }) => path).toSorted()).toEqual([
    'filamentTypes.coil.clipMass',
    'filaments[1]',
    'filaments[2]',
    'filaments[3].filaments[0].position',
    'filaments[3].filaments[1].position',
    'film.density',
    'name',
    'obstacles[2].innerDiameter',
    'story',
    'witnesses[0].radius',
    'witnesses[1].position',
  ]);
});

test('a list of more problems than anyone reads ends with their number', () => {
  const filaments = Array.from({ length: 4000 }, () => ({ position: ['9 m', '0 m', '1 m'] }));
  const opened = openPlantFile(editedDesign({ 'filaments[3].filaments': filaments, 'filaments[3].type': 'boat' }));
  const problems = opened.ok ? [] : opened.problems;
  expect(problems).toHaveLength(MAX_PROBLEMS + 1);
  expect(problems.at(-1)).toEqual({ path: '', message: `… and ${4000 - MAX_PROBLEMS} more problems` });
});

describe('an object that no JSON text could give', () => {
  const cycle: Record<string, unknown> = { version: 1 };
  cycle['mirror'] = [cycle];
  test.each([
    ['a cycle', cycle, 'mirror', 'found a list'],
    ['a big integer', { version: 1, mirror: 10n }, 'mirror', 'found 10'],
    ['undefined', undefined, '', 'found nothing'],
    ['a function', () => 1, '', 'an object in braces'],
    ['a date that is none', { version: 1, name: new Date(NaN) }, 'name', 'found null'],
    ['NaN for a number', editedDesign({ 'mirror.conicConstant': NaN }), 'mirror.conicConstant', 'found NaN'],
    ['Infinity for a count', editedDesign({ 'filaments[0].count': Infinity }), 'filaments[0].count', 'found Infinity'],
  ])('%s is refused with a sentence', (_name, value, path, message) => {
    const opened = openPlantFile(value);
    const there = opened.ok ? [] : opened.problems.filter((problem) => problem.path === path);
    expect(there.map((problem) => problem.message)).toContainEqual(expect.stringContaining(message));
  });
});
