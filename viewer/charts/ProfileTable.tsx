/** The radial profile as a table, for those who do not see the chart. */
import { fixed } from '../format/numbers.ts';
import { profileRows, type ProfileData } from './profileData.ts';
import type { ProfileUnits } from './shownProfile.ts';
import { lengthDecimals, shownDecimals } from './shownUnits.ts';

const ROWS = 25;
/** Decimals of a nanometre. */
const DECIMALS = 2;

interface ProfileTableProps {
  readonly data: ProfileData;
  readonly units: ProfileUnits;
}

export function ProfileTable({ data, units: { length, thickness } }: ProfileTableProps) {
  const thick = (values: Float64Array, i: number): string =>
    fixed((values[i] ?? 0) * thickness.factor, shownDecimals(thickness, DECIMALS));
  return (
    <details className="profile-table">
      <summary>
        <span className="visually-hidden">Radial profile as a </span>Table
      </summary>
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">Radius, {length.unit}</th>
            <th scope="col">Mean, {thickness.unit}</th>
            <th scope="col">Least, {thickness.unit}</th>
            <th scope="col">Most, {thickness.unit}</th>
          </tr>
        </thead>
        <tbody>
          {profileRows(data, ROWS).map((i) => (
            <tr key={i}>
              <th scope="row">{fixed((data.radius[i] ?? 0) * length.factor, lengthDecimals(length))}</th>
              <td>{thick(data.mean_nm, i)}</td>
              <td>{thick(data.minimum_nm, i)}</td>
              <td>{thick(data.maximum_nm, i)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
