/** The largest aberrations that a coat adds, as signed bars with their numbers. */
import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { Figure } from '../../../engine/film/figure.ts';
import { PISTON } from '../../../engine/film/zernike.ts';
import { shownDecimals, thicknessUnit } from '../../charts/shownUnits.ts';
import { fixed } from '../../format/numbers.ts';
import { useUnits } from '../../state/units.ts';

const MOST = 10;
/** Smaller ones would be written as zero, m. */
const LEAST = 0.5e-12;
const NM = 1e9;
/** Half width of the bars' column, CSS pixels. */
const HALF = 90;

export function ZernikeBars({ figure }: { readonly figure: Figure }) {
  const id = useId();
  const unit = thicknessUnit(useUnits());
  const sorted = figure.terms
    .filter(({ noll }) => noll !== PISTON)
    .toSorted((a, b) => Math.abs(b.coefficient) - Math.abs(a.coefficient));
  const largest = sorted.slice(0, MOST).filter(({ coefficient }, i) => i === 0 || Math.abs(coefficient) >= LEAST);
  const most = Math.abs(largest[0]?.coefficient ?? 0) || 1e-12;
  const x = scaleLinear([-most, most], [-HALF, HALF]);
  const isTaken = (noll: number): boolean =>
    ((noll === 2 || noll === 3) && figure.removed.includes('tilt')) ||
    (noll === 4 && figure.removed.includes('defocus'));
  return (
    <section className="panel film-zernike" aria-labelledby={id} tabIndex={0}>
      <h2 id={id}>
        Aberrations of the surface{' '}
        <small>Zernike polynomials in Noll’s order over the clear aperture; rms of each</small>
      </h2>
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">no.</th>
            <th scope="col">aberration</th>
            <td aria-hidden="true" />
            <th scope="col">rms, {unit.unit}</th>
          </tr>
        </thead>
        <tbody>
          {largest.map(({ noll, name, coefficient }) => (
            <tr key={noll} data-taken={isTaken(noll) || undefined}>
              <td>{noll}</td>
              <th scope="row">
                {name} {isTaken(noll) && <small>taken off</small>}
              </th>
              <td aria-hidden="true">
                <svg width={2 * HALF} height={16} className="film-bar">
                  <path d={`M${HALF} 0v16`} />
                  <rect
                    x={HALF + Math.min(0, x(coefficient))}
                    y={3}
                    width={Math.max(0.5, Math.abs(x(coefficient)))}
                    height={10}
                  />
                </svg>
              </td>
              <td className="value">{fixed(coefficient * NM * unit.factor, shownDecimals(unit, 3))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        The terms leave {fixed(figure.remainder * NM * unit.factor, shownDecimals(unit, 3))} {unit.unit} rms
        unexplained.
      </p>
    </section>
  );
}
