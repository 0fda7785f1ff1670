/** Marks the selected filaments as failed, or puts them back in use. */
import { useDesign } from '../../state/designStore.ts';
import { editDesign } from '../../state/editDesign.ts';
import { withOutOfUse } from '../../state/edits/ownValues.ts';
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
  const problems = editDesign(`use of ${what}`, (file) => withOutOfUse(file, meant, outOfUse));
  announce(problems[0]?.message ?? `${what} ${outOfUse ? 'out of use' : 'in use again'}.`);
}
