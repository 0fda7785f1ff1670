/** The Vacuum stage: what air does to vapour and film, and when the vacuum is good enough. */
import { useDeferredValue, useMemo } from 'react';
import { Tabs } from '../../panels/Tabs.tsx';
import { VerdictLine } from '../../panels/VerdictLine.tsx';
import { useDesign } from '../../state/designStore.ts';
import { useUnits } from '../../state/units.ts';
import { StageFrame } from '../StageFrame.tsx';
import { GasNumbers } from './gas/GasNumbers.tsx';
import { GasPicture } from './gas/GasPicture.tsx';
import { gasReport } from './gas/gasReport.ts';
import './vacuum.css';
import { GasForm } from './VacuumForm.tsx';
import { vacuumVerdict } from './vacuumVerdict.ts';
import { useVacuumView } from './vacuumView.ts';

export function VacuumStage() {
  const plant = useDeferredValue(useDesign((state) => state.current.plant));
  const units = useUnits();
  const tab = useVacuumView((view) => view.tab);
  const report = useMemo(() => gasReport(plant), [plant]);
  const verdict = useMemo(() => vacuumVerdict(report, units), [report, units]);
  return (
    <StageFrame
      sentence={<VerdictLine {...verdict} />}
      aside={<GasForm />}
      picture={
        <div className="vacuum-pictures">
          <Tabs
            label="Picture of the vacuum"
            chosen={tab}
            onChoose={(chosen) => useVacuumView.setState({ tab: chosen })}
            tabs={[{ id: 'gas', label: 'Gas', content: () => <GasPicture plant={plant} report={report} /> }]}
          />
        </div>
      }
      numbers={<GasNumbers report={report} />}
      numbersLabel="Numbers of the vacuum"
    />
  );
}
