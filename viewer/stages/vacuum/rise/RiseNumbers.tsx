/** The readings of a rate-of-rise test, and what the fit says. */
import { scientific } from '../../../format/scientific.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import { GaugePaste } from '../GaugePaste.tsx';
import type { GaugeReadings } from '../gaugeReadings.ts';
import { durationText, flowUnit, shownFlow } from '../vacuumText.ts';
import { useVacuumView } from '../vacuumView.ts';
import type { RiseCase } from './riseCase.ts';
import { inUnit } from '../../../../engine/index.ts';
import type { RiseFit } from '../../../../engine/vacuum/rateOfRise.ts';

/** Invented readings: a leak and a wall that comes to rest. */
const EXAMPLE = `time,pressure
min,mbar
0,1.0e-5
2,1.9e-4
4,3.6e-4
6,5.2e-4
8,6.6e-4
10,8.0e-4
12,9.3e-4
15,1.11e-3
20,1.40e-3
25,1.67e-3
30,1.93e-3`;

const VERDICTS = {
  leak: 'leak',
  outgassing: 'outgassing',
  both: 'leak and outgassing',
  undecided: 'cannot tell',
  'no rise': 'no rise',
} as const;

const whole = (share: number): string => (100 * share).toFixed(0);

function rowsOf(fit: RiseFit, volume: number, units: Units): NumberRow[] {
  const flow = (value: number): string => scientific(shownFlow(units, value), 2);
  const { leak, leakShare } = fit;
  return [
    { label: 'Verdict', value: VERDICTS[fit.verdict] },
    {
      label: 'Leak',
      help: 'gas that comes in at a steady rate',
      detail: `${flow(leak.low)} to ${flow(leak.high)}`,
      value: flow(leak.best),
      unit: flowUnit(units),
    },
    {
      label: 'Share of the leak',
      help: 'in the rise from the first reading to the last',
      detail: `${whole(leakShare.low)} to ${whole(leakShare.high)} %`,
      value: whole(leakShare.best),
      unit: '%',
    },
    { label: 'Outgassing at the start', value: flow(fit.outgassing), unit: flowUnit(units) },
    ...(fit.settling === null
      ? []
      : [{ label: 'Walls come to rest in', help: 'to 1/e', value: durationText(fit.settling) }]),
    {
      label: 'Readings scatter by',
      help: 'root mean square about the fit',
      value: scientific(inUnit(fit.scatter, 'pressure', units.pressure), 2),
      unit: units.pressure,
    },
    { label: 'Volume', value: scientific(volume, 3), unit: 'm³' },
  ];
}

interface RiseNumbersProps {
  readonly rise: RiseCase | null;
  readonly read: GaugeReadings;
}

export function RiseNumbers({ rise, read }: RiseNumbersProps) {
  const units = useUnits();
  const text = useVacuumView(({ riseText }) => riseText);
  return (
    <>
      {rise?.fit && (
        <NumbersTable
          caption="Leak or outgassing"
          captionDetail="ranges: 19 times in 20"
          labelHeading="from the shape of the rise"
          rows={rowsOf(rise.fit, rise.volume, units)}
        >
          <p>{rise.fit.sentence}</p>
          <p>
            Straight line against bend, least squares without negative parts:{' '}
            <code>p = p₀ + Q t/V + b (1 − e^(−t/τ))</code>; common practice of vacuum testing, no source.
          </p>
        </NumbersTable>
      )}
      {rise && rise.reasons.length > 0 && (
        <section className="panel" role="status" aria-label="Why there is no fit">
          {rise.reasons.map((reason) => (
            <p key={reason}>{reason}</p>
          ))}
        </section>
      )}
      <GaugePaste
        label="Readings with all valves closed"
        example={EXAMPLE}
        text={text}
        onText={(riseText) => useVacuumView.setState({ riseText })}
        read={read}
      />
    </>
  );
}
