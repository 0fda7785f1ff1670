/** Thickness against radius. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { uPlot } from './plot.ts';
import 'uplot/dist/uPlot.min.css';
import type { Coat } from '../../engine/index.ts';
import { fixed, metres, tolerance } from '../format/numbers.ts';
import { useColors } from '../state/useColors.ts';
import { profileData, type ProfileData } from './profileData.ts';
import { ProfileKey } from './ProfileKey.tsx';
import { profileOptions } from './profileOptions.ts';
import { ProfileTable } from './ProfileTable.tsx';

function describe({ radius, mean_nm, average_nm, target_nm, tolerance: limit }: ProfileData): string {
  const last = radius.length - 1;
  return (
    `Radial profile: ${fixed(mean_nm[0] ?? 0, 1)} nm at radius ${metres(radius[0] ?? 0, 2)}, ` +
    `${fixed(mean_nm[last] ?? 0, 1)} nm at ${metres(radius[last] ?? 0, 2)}; average ${fixed(average_nm, 1)} nm, ` +
    `tolerance ${tolerance(limit)}, target ${fixed(target_nm, 0)} nm. All values are in the table.`
  );
}

function Plot({ data, onHover }: { readonly data: ProfileData; readonly onHover: (index: number | null) => void }) {
  const holder = useRef<HTMLDivElement>(null);
  const colors = useColors();
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const size = () => ({ width: element.clientWidth, height: element.clientHeight });
    const { radius, mean_nm, minimum_nm, maximum_nm } = data;
    const plot = new uPlot(
      profileOptions(data, colors, size(), onHover),
      [radius, mean_nm, minimum_nm, maximum_nm] as unknown as uPlot.AlignedData,
      element,
    );
    const observer = new ResizeObserver(() => plot.setSize(size()));
    observer.observe(element);
    return () => {
      observer.disconnect();
      plot.destroy();
    };
  }, [data, colors, onHover]);
  return <div className="plot" ref={holder} role="img" aria-label={describe(data)} />;
}

export function ProfileChart({ coat }: { readonly coat: Coat }) {
  const data = useMemo(() => profileData(coat), [coat]);
  const [hovered, setHovered] = useState<number | null>(null);
  return (
    <section className="panel profile" aria-labelledby="profile-title">
      <div className="profile-head">
        <h2 id="profile-title" className="visually-hidden">
          Radial profile
        </h2>
        <ProfileKey data={data} hovered={hovered} />
      </div>
      <Plot data={data} onHover={setHovered} />
      <ProfileTable data={data} />
    </section>
  );
}
