/** Gauge readings of a real pump-down, laid over the curve. */
import { GaugePaste } from '../GaugePaste.tsx';
import type { GaugeReadings } from '../gaugeReadings.ts';
import { useVacuumView } from '../vacuumView.ts';

/** Invented readings. */
const EXAMPLE = `time,pressure
min,mbar
5,180
10,32
15,4.1
20,0.45
30,0.052
45,5.0e-2
60,4.0e-5
90,9.5e-6`;

export function PumpDownReadings({ read }: { readonly read: GaugeReadings }) {
  const text = useVacuumView(({ pumpDownText }) => pumpDownText);
  return (
    <GaugePaste
      label="Readings of a pump-down"
      example={EXAMPLE}
      text={text}
      onText={(pumpDownText) => useVacuumView.setState({ pumpDownText })}
      read={read}
    />
  );
}
