/** The glow discharge: its cautions first, then whether it can burn as meant, and how its dose grows. */
import { CircleCheck, CircleSlash, TriangleAlert } from 'lucide-react';
import { useMemo } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { GLOW_CAUTIONS, type GlowFinding } from '../../../../engine/vacuum/glow.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import type { LogChartData } from '../../../charts/log/logChartTypes.ts';
import { scientific } from '../../../format/scientific.ts';
import { Cautions } from '../../../panels/Cautions.tsx';
import { durationText, fileStem } from '../vacuumText.ts';
import type { GlowCase } from './glowCase.ts';

const SIGNS = { good: CircleCheck, watch: TriangleAlert, bad: CircleSlash } as const;
const WORDS = { good: 'as usual', watch: 'watch', bad: 'not so' } as const;

function Findings({ findings }: { readonly findings: readonly GlowFinding[] }) {
  return (
    <section className="panel" aria-label="Whether it burns as meant">
      <h2>Whether it burns as meant</h2>
      <ul className="vacuum-findings">
        {findings.map(({ tone, text }) => {
          const Sign = SIGNS[tone];
          return (
            <li key={text} data-tone={tone}>
              <Sign aria-label={WORDS[tone]} size={16} /> {text}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

const MINUTE = 60;
const PER_CM2 = 1e-4;
const POINTS = 25;

/** Dose against time at this current: it grows in proportion. */
function doseChart({ settings, dose }: GlowCase): LogChartData {
  const end = 2 * settings.duration;
  const times = Array.from({ length: POINTS }, (_, i) => (end * i) / (POINTS - 1));
  return {
    xAxis: { label: 'Time', unit: 'min', scale: 'linear' },
    yAxis: { label: 'Ions', unit: '1/cm²', scale: 'linear' },
    series: [
      {
        label: 'at this current',
        x: times.map((time) => time / MINUTE),
        y: times.map((time) => (dose.ions * PER_CM2 * time) / settings.duration),
      },
    ],
    thresholds: [{ axis: 'x', value: settings.duration / MINUTE, label: 'burns for this long' }],
  };
}

interface GlowPictureProps {
  readonly plant: Plant;
  readonly glow: GlowCase;
}

export function GlowPicture({ plant, glow }: GlowPictureProps) {
  const data = useMemo(() => doseChart(glow), [glow]);
  return (
    <div className="vacuum-glow">
      <Cautions title="Cautions for the glow discharge" cautions={GLOW_CAUTIONS} />
      <Findings findings={glow.dose.findings} />
      <LogChart
        title="Dose"
        description={`Ions per square centimetre against time: ${scientific(glow.dose.ions * PER_CM2, 2)} after ${durationText(glow.settings.duration)}.`}
        data={data}
        fileName={`${fileStem(plant)}-glow-dose`}
      />
    </div>
  );
}
