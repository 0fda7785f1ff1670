/** Chooses the light that the mirror is judged in, and the angle at which it arrives. */
import { useId } from 'react';
import { BANDS } from '../../../engine/film/light.ts';
import { useDesign } from '../../state/designStore.ts';
import { QuantityField } from '../../panels/QuantityField.tsx';
import { useUnits } from '../../state/units.ts';
import { useFilmView, type LightKind } from './filmView.ts';

const DEGREE = Math.PI / 180;
/** Beyond it a mirror is hit edge-on; the formulas hold to just below a right angle. */
const STEEPEST = 89 * DEGREE;
/** Temperatures of things that glow, K. */
const GLOWING = [500, 100_000] as const;
const EXAMPLE = 'wavelength,power\nnm,\n400,0.4\n500,0.8\n600,1\n700,0.9';

export function LightControls() {
  const id = useId();
  const { light, temperature, angle, spectrumText } = useFilmView();
  const wavelength = useDesign((state) => state.current.plant.film.wavelength);
  const { temperature: kelvin } = useUnits();
  const kinds: readonly (readonly [LightKind, string])[] = [
    ['wavelength', `${Number((wavelength * 1e9).toPrecision(6))} nm, as the design says`],
    ...Object.values(BANDS).map(({ name, center }): [LightKind, string] => [
      name as LightKind,
      `${name} band, ${(center * 1e9).toFixed(0)} nm`,
    ]),
    ['black body', 'black body'],
    ['spectrum', 'spectrum of your own'],
  ];
  return (
    <div className="map-controls film-light" role="group" aria-label="Light">
      <span className="map-choice">
        <label htmlFor={`${id}-light`}>Light</label>
        <select
          id={`${id}-light`}
          value={light}
          onChange={({ target }) => useFilmView.setState({ light: target.value as LightKind })}
        >
          {kinds.map(([kind, name]) => (
            <option key={kind} value={kind}>
              {name}
            </option>
          ))}
        </select>
      </span>
      {light === 'black body' && (
        <QuantityField
          label="at"
          dimension="temperature"
          unit={kelvin}
          value={temperature}
          range={GLOWING}
          onChange={(value) => void useFilmView.setState({ temperature: value })}
        />
      )}
      <QuantityField
        label="arriving at"
        dimension="angle"
        unit="deg"
        value={angle}
        range={[0, STEEPEST]}
        onChange={(value) => void useFilmView.setState({ angle: value })}
      />
      {light === 'spectrum' && (
        <details className="film-spectrum" open={spectrumText.trim() === ''}>
          <summary>Spectrum</summary>
          <label htmlFor={`${id}-csv`}>Columns wavelength and power, a unit row under the heading</label>
          <textarea
            id={`${id}-csv`}
            rows={5}
            spellCheck={false}
            value={spectrumText}
            placeholder={EXAMPLE}
            onChange={({ target }) => useFilmView.setState({ spectrumText: target.value })}
          />
        </details>
      )}
    </div>
  );
}
