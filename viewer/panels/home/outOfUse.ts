/** Marks the selected filaments as failed, or puts them back in use. */
import type { DesignFile } from '../../../engine/index.ts';
import { useDesign } from '../../state/designStore.ts';
import { editDesign } from '../../state/editDesign.ts';
import { withOwnValues } from '../../state/filamentEdits.ts';
import { useSelection } from '../../state/selection.ts';
import { announce } from '../../state/variants/announcement.ts';

/** Takes all selected filaments out of use; if they all are, puts them back. */
export function toggleOutOfUse(): void {
  const selected = useSelection.getState().parts.filter((part) => part.kind === 'filament');
  const { filaments } = useDesign.getState().current.plant;
  const meant = filaments.filter(({ set, number }) =>
    selected.some((part) => part.set === set && part.number === number),
  );
  const [first] = meant;
  if (!first) {
    announce('No filament is selected.');
    return;
  }
  const outOfUse = meant.some((filament) => !filament.outOfUse);
  const what = meant.length === 1 ? first.name : `${meant.length} filaments`;
  const problems = editDesign(`use of ${what}`, (file) =>
    meant.reduce<DesignFile>(
      (changed, { set, number }) => withOwnValues(changed, set, number, { outOfUse }) as DesignFile,
      file,
    ),
  );
  announce(problems[0]?.message ?? `${what} ${outOfUse ? 'out of use' : 'in use again'}.`);
}
