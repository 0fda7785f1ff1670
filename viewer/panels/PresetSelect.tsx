/** Chooses a ready-made design. */
import { useDesign } from '../state/designStore.ts';
import { choosePreset } from '../state/openFiles.ts';
import { presets } from '../../presets/index.ts';

const OWN = '';

export function PresetSelect() {
  const presetId = useDesign((state) => state.current.presetId);
  const name = useDesign((state) => state.current.file.name);
  const isPresetName = presets.some(({ file }) => file.name === name);
  return (
    <label className="preset">
      <span className="visually-hidden">Preset</span>
      <select value={presetId ?? OWN} onChange={(event) => choosePreset(event.target.value)}>
        {presetId === null && (
          <option value={OWN}>
            {name}
            {isPresetName ? ' (edited)' : ''}
          </option>
        )}
        {presets.map(({ id, file }) => (
          <option key={id} value={id}>
            {file.name}
          </option>
        ))}
      </select>
    </label>
  );
}
