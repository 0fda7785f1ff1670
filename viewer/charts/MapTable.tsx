/** The marked places of a map as a table. */
import type { Coat } from '../../engine/index.ts';
import { useUnits } from '../state/units.ts';
import { lengthUnit, shownPlace, shownText, thicknessUnit } from './shownUnits.ts';

export function MapTable({ coat }: { readonly coat: Coat }) {
  const units = useUnits();
  const { minimum, maximum } = coat.statistics;
  const rows = [
    { name: 'Thinnest', position: minimum.position, thickness: minimum.value },
    { name: 'Thickest', position: maximum.position, thickness: maximum.value },
    ...coat.plant.witnesses.map(({ name, position }, i) => ({
      name,
      position,
      thickness: coat.witnessThickness[i] ?? NaN,
    })),
  ];
  return (
    <details className="chart-table">
      <summary>
        <span className="visually-hidden">Marked places of the map as a </span>Table
      </summary>
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Radius, angle</th>
            <th scope="col">Thickness</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, position: [x, y], thickness }, i) => (
            <tr key={`${i} ${name}`}>
              <th scope="row">{name}</th>
              <td>{shownPlace(x - coat.plant.shape.centerX, y, lengthUnit(units))}</td>
              <td>{shownText(thickness * 1e9, thicknessUnit(units), 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
