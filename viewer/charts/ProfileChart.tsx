/** Thickness against radius. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { uPlot } from './plot.ts';
import 'uplot/dist/uPlot.min.css';
import type { Coat } from '../../engine/index.ts';
import { tolerance } from '../format/numbers.ts';
import { useUnits } from '../state/units.ts';
import { useColors } from '../state/useColors.ts';
import './profile.css';
import { profileData, type ProfileData } from './profileData.ts';
import { ProfileKey } from './ProfileKey.tsx';
import { profileOptions } from './profileOptions.ts';
import { ProfileTable } from './ProfileTable.tsx';
import { shownProfile, type ProfileUnits, type ShownProfile } from './shownProfile.ts';
import { lengthUnit, shownLength, shownText, thicknessUnit } from './shownUnits.ts';

function describe(data: ProfileData, { length, thickness }: ProfileUnits): string {
  const { radius, mean_nm, average_nm, target_nm, tolerance: limit } = data;
  const last = radius.length - 1;
  const at = (i: number): string =>
    `${shownText(mean_nm[i] ?? 0, thickness)} at radius ${shownLength(radius[i] ?? 0, length)}`;
  return (
    `Radial profile: ${at(0)}, ${at(last)}; average ${shownText(average_nm, thickness)}, ` +
    `tolerance ${tolerance(limit)}, target ${shownText(target_nm, thickness, 0)}. All values are in the table.`
  );
}

interface PlotProps {
  readonly data: ProfileData;
  readonly units: ProfileUnits;
  readonly onHover: (index: number | null) => void;
}

const linesOf = ({ radius, mean, minimum, maximum }: ShownProfile): uPlot.AlignedData =>
  [radius, mean, minimum, maximum] as unknown as uPlot.AlignedData;

function Plot({ data, units, onHover }: PlotProps) {
  const holder = useRef<HTMLDivElement>(null);
  const colors = useColors();
  const shown = useMemo(() => shownProfile(data, units), [data, units]);
  const latest = useRef(shown);
  const plot = useRef<uPlot | null>(null);
  // a new coat moves the lines of the plot that is there: to make it anew would hold up a drag
  useEffect(() => {
    latest.current = shown;
    plot.current?.setData(linesOf(shown));
  }, [shown]);
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const size = () => ({ width: element.clientWidth, height: element.clientHeight });
    const options = profileOptions(() => latest.current, units, colors, size(), onHover);
    const made = new uPlot(options, linesOf(latest.current), element);
    plot.current = made;
    const observer = new ResizeObserver(() => made.setSize(size()));
    observer.observe(element);
    return () => {
      plot.current = null;
      observer.disconnect();
      made.destroy();
    };
  }, [units, colors, onHover]);
  return <div className="plot" ref={holder} role="img" aria-label={describe(data, units)} />;
}

export function ProfileChart({ coat }: { readonly coat: Coat }) {
  const data = useMemo(() => profileData(coat), [coat]);
  const userUnits = useUnits();
  const units = useMemo(() => ({ length: lengthUnit(userUnits), thickness: thicknessUnit(userUnits) }), [userUnits]);
  const [hovered, setHovered] = useState<number | null>(null);
  return (
    <section className="panel profile" aria-labelledby="profile-title">
      <div className="profile-head">
        <h2 id="profile-title" className="visually-hidden">
          Radial profile
        </h2>
        <ProfileKey data={data} units={units} hovered={hovered} />
      </div>
      <Plot data={data} units={units} onHover={setHovered} />
      <ProfileTable data={data} units={units} />
    </section>
  );
}
