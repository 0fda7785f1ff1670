/** What the lines of the profile mean; under the pointer, what they read. */
import { tolerance } from '../format/numbers.ts';
import './keySigns.css';
import type { ProfileData } from './profileData.ts';
import type { ProfileUnits } from './shownProfile.ts';
import { shownLength, shownText } from './shownUnits.ts';

interface ProfileKeyProps {
  readonly data: ProfileData;
  readonly units: ProfileUnits;
  readonly hovered: number | null;
}

export function ProfileKey({ data, units: { length, thickness }, hovered }: ProfileKeyProps) {
  if (hovered !== null && hovered < data.radius.length) {
    const at = (values: Float64Array): string => shownText(values[hovered] ?? 0, thickness);
    return (
      <p className="profile-reading number">
        r {shownLength(data.radius[hovered] ?? 0, length)}: mean {at(data.mean_nm)}, from {at(data.minimum_nm)} to{' '}
        {at(data.maximum_nm)}
      </p>
    );
  }
  return (
    <ul className="profile-key">
      <li>
        <i className="line-sign strong" /> mean
      </li>
      <li>
        <i className="band-sign filled" /> least to most
      </li>
      <li>
        <i className="band-sign hatched" /> average {tolerance(data.tolerance)}
      </li>
      <li>
        <i className="line-sign dashed" /> target {shownText(data.target_nm, thickness, 0)}
      </li>
      <li>
        <i className="line-sign dotted upright" /> clear aperture
      </li>
    </ul>
  );
}
