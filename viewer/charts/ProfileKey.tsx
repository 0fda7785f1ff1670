/** What the lines of the profile mean; under the pointer, what they read. */
import { fixed, metres, tolerance } from '../format/numbers.ts';
import type { ProfileData } from './profileData.ts';

interface ProfileKeyProps {
  readonly data: ProfileData;
  readonly hovered: number | null;
}

export function ProfileKey({ data, hovered }: ProfileKeyProps) {
  if (hovered !== null && hovered < data.radius.length) {
    const at = (values: Float64Array): string => fixed(values[hovered] ?? 0, 1);
    return (
      <p className="profile-reading number">
        r {metres(data.radius[hovered] ?? 0)}: mean {at(data.mean_nm)} nm, from {at(data.minimum_nm)} to{' '}
        {at(data.maximum_nm)} nm
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
        <i className="line-sign dashed" /> target {fixed(data.target_nm, 0)} nm
      </li>
      <li>
        <i className="line-sign dotted upright" /> clear aperture
      </li>
    </ul>
  );
}
