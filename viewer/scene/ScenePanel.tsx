/** What the picture shows: the mapped quantity, the range of its colours, feeds and paths. */
import { EditField } from '../panels/EditField.tsx';
import { setColorRange, showQuantity, useMapView, type ColorRange, type MappedQuantity } from '../state/mapView.ts';
import { usePicture } from './picture.ts';
import { setSceneOptions, useSceneOptions, type SceneOptions } from './sceneOptions.ts';

const QUANTITIES: readonly (readonly [MappedQuantity, string])[] = [
  ['thickness', 'Thickness'],
  ['deviation', 'Deviation from target'],
  ['incidence', 'Mean incidence angle'],
  ['grazing', 'Share arriving beyond 60°'],
];

const MODES: readonly (readonly [ColorRange['mode'], string])[] = [
  ['automatic', 'Automatic'],
  ['shared', 'Shared by all variants'],
  ['fixed', 'Fixed'],
];

/** Digits of a limit in its field. */
const DIGITS = 6;

function chooseMode(mode: string): void {
  const { low, high } = usePicture.getState().picture?.scale ?? { low: 0, high: 1 };
  if (mode === 'fixed') setColorRange({ mode, low, high });
  else if (mode === 'automatic' || mode === 'shared') setColorRange({ mode });
}

/** A limit of the fixed range, typed as a plain number or with the unit after it. */
function commitLimit(range: { readonly low: number; readonly high: number }, key: 'low' | 'high', text: string) {
  const value = Number(
    text
      .replace(',', '.')
      .replace('\u2212', '-')
      .replace(/\s*(nm|%|°)\s*$/, ''),
  );
  if (text.trim() === '' || !Number.isFinite(value)) return `expected a number; found "${text}"`;
  const next = { ...range, [key]: value };
  if (next.low >= next.high) return 'expected the lower limit below the upper one';
  setColorRange({ mode: 'fixed', ...next });
  return null;
}

function OptionBox({ name, label }: { readonly name: keyof SceneOptions; readonly label: string }) {
  const isOn = useSceneOptions((state) => state[name]);
  return (
    <label className="check">
      <input type="checkbox" checked={isOn} onChange={({ target }) => setSceneOptions({ [name]: target.checked })} />
      {label}
    </label>
  );
}

export function ScenePanel() {
  const { quantity, range } = useMapView();
  const unit = usePicture((state) => state.picture?.field.unit ?? '');
  return (
    <>
      <label className="scene-choice">
        <span>Colours show</span>
        <select value={quantity} onChange={({ target }) => showQuantity(target.value as MappedQuantity)}>
          {QUANTITIES.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <label className="scene-choice">
        <span>Range of colours</span>
        <select value={range.mode} onChange={({ target }) => chooseMode(target.value)}>
          {MODES.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {range.mode === 'fixed' &&
        (['low', 'high'] as const).map((key) => (
          <EditField
            key={key}
            label={key === 'low' ? `From, ${unit}` : `To, ${unit}`}
            value={String(Number(range[key].toPrecision(DIGITS)))}
            onCommit={(text) => commitLimit(range, key, text)}
          />
        ))}
      {range.mode !== 'fixed' && quantity === 'thickness' && <OptionBox name="fromZero" label="Colours from zero" />}
      <OptionBox name="showsFeeds" label="Feeds by colour and number" />
      <OptionBox name="showsPaths" label="Paths from filaments to the probe" />
    </>
  );
}
