import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openPlant, openPlantFile } from '../../engine/index.ts';
import { designText, keptText } from '../../viewer/format/designText.ts';
import { packFragment, unpackFragment } from '../../viewer/state/keep/designLink.ts';
import { validDesign } from '../engine/design/validDesigns.ts';

/** What a text gives when it is opened, or the problems. */
function reopened(text: string): unknown {
  const opened = openPlant(text);
  return opened.ok ? { file: opened.file, plant: opened.plant } : opened.problems;
}

test('any valid design survives saving and opening, a link, and the database, without change', () => {
  fc.assert(
    fc.property(validDesign, (design) => {
      const opened = openPlantFile(JSON.parse(JSON.stringify(design))); // JSON knows no −0
      if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
      const { file, plant } = opened;
      const link = unpackFragment(packFragment(keptText(file)));
      const texts = [designText(file), keptText(file), link.ok ? link.text : link.message];
      for (const text of texts) expect(reopened(text)).toEqual({ file, plant });
    }),
    { seed: 31, numRuns: 150 },
  );
});
