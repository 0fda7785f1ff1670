/** The residual gas as a mixture, in one line: its shares must add up, so they are edited together. */
import { EditField } from '../../../panels/EditField.tsx';
import { changeDesign } from '../../../panels/plant/formEdits.ts';
import { useDesign } from '../../../state/designStore.ts';
import { withValue } from '../../../state/edits/path.ts';
import { mixtureRows, mixtureText } from './mixtureText.ts';

const PATH = ['vacuum', 'mixture'] as const;

export function MixtureField() {
  const mixture = useDesign(({ current }) => current.file.vacuum?.mixture);
  return (
    <div className="vacuum-mixture">
      <EditField
        label="Mixture instead of one gas"
        value={mixture ? mixtureText(mixture) : ''}
        onCommit={(text) => changeDesign('mixture of the gas', (file) => withValue(file, PATH, mixtureRows(text)))}
      />
      <p className="quiet">Such as 78 % N2, 21 % O2, 1 % Ar; nothing for the one gas above.</p>
    </div>
  );
}
