/** The radial profile as a table, for those who do not see the chart. */
import { fixed } from '../format/numbers.ts';
import { profileRows, type ProfileData } from './profileData.ts';

const ROWS = 25;

export function ProfileTable({ data }: { readonly data: ProfileData }) {
  return (
    <details className="profile-table">
      <summary>
        <span className="visually-hidden">Radial profile as a </span>Table
      </summary>
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">Radius, m</th>
            <th scope="col">Mean, nm</th>
            <th scope="col">Least, nm</th>
            <th scope="col">Most, nm</th>
          </tr>
        </thead>
        <tbody>
          {profileRows(data, ROWS).map((i) => (
            <tr key={i}>
              <th scope="row">{fixed(data.radius[i] ?? 0, 3)}</th>
              <td>{fixed(data.mean_nm[i] ?? 0, 2)}</td>
              <td>{fixed(data.minimum_nm[i] ?? 0, 2)}</td>
              <td>{fixed(data.maximum_nm[i] ?? 0, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
