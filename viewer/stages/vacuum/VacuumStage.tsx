/** The Vacuum stage: what air does to vapour and film, and when the vacuum is good enough. */
import { useMemo, type ReactNode } from 'react';
import { Tabs, type Tab } from '../../panels/Tabs.tsx';
import { VerdictLine } from '../../panels/VerdictLine.tsx';
import { useUnits } from '../../state/units.ts';
import { StageFrame } from '../StageFrame.tsx';
import { ContaminationNumbers } from './contamination/ContaminationNumbers.tsx';
import { ContaminationPicture } from './contamination/ContaminationPicture.tsx';
import { FiringForm } from './contamination/FiringForm.tsx';
import { GasNumbers } from './gas/GasNumbers.tsx';
import { GasPicture } from './gas/GasPicture.tsx';
import { ModelNotes } from './ModelNotes.tsx';
import { GlowNumbers } from './glow/GlowNumbers.tsx';
import { GlowPicture } from './glow/GlowPicture.tsx';
import { GoNumbers } from './go/GoNumbers.tsx';
import { GoPicture } from './go/GoPicture.tsx';
import { goItems, goVerdict } from './go/goItems.ts';
import { NoSystem } from './pumping/NoSystem.tsx';
import { PumpDownReadings } from './pumping/PumpDownReadings.tsx';
import { PumpingNumbers } from './pumping/PumpingNumbers.tsx';
import { PumpingPicture } from './pumping/PumpingPicture.tsx';
import { RiseNumbers } from './rise/RiseNumbers.tsx';
import { RisePicture } from './rise/RisePicture.tsx';
import { ScatterForm } from './scattering/ScatterForm.tsx';
import { ScatterNumbers } from './scattering/ScatterNumbers.tsx';
import { ScatterPicture } from './scattering/ScatterPicture.tsx';
import { useVacuum, type VacuumState } from './useVacuum.ts';
import './vacuum.css';
import { GasForm, GlowForm, SystemForm } from './VacuumForm.tsx';
import { useVacuumView, type VacuumTab } from './vacuumView.ts';

interface Room extends Tab<VacuumTab> {
  readonly numbers: () => ReactNode;
  readonly aside: () => ReactNode;
}

const missing = (text: string): ReactNode => (
  <section className="panel vacuum-none">
    <p>{text}</p>
  </section>
);

const NO_VAPOUR = 'No filament evaporates anything, so there is no vapour to follow.';
const NO_FILM = 'This follows the coat, and needs film at every place of the clear aperture.';

const gasAside = (): ReactNode => (
  <>
    <FiringForm />
    <GasForm />
  </>
);

/** The rooms of the stage: what each shows in the middle, on the right and on the left. */
function roomsOf(state: VacuumState, items: ReturnType<typeof goItems>): readonly Room[] {
  const { plant, coat, gas, film, pumping, glow, pumpDownRead, riseRead, rise } = state;
  return [
    {
      id: 'go',
      label: 'Go or no-go',
      content: () => <GoPicture items={items} />,
      numbers: () => <GoNumbers state={state} />,
      aside: gasAside,
    },
    {
      id: 'gas',
      label: 'Gas',
      content: () => (gas ? <GasPicture plant={plant} gasCase={gas} /> : missing(NO_VAPOUR)),
      numbers: () => gas && <GasNumbers gasCase={gas} />,
      aside: gasAside,
    },
    {
      id: 'scattering',
      label: 'Scattering',
      content: () => (coat && gas ? <ScatterPicture coat={coat} /> : missing(gas ? NO_FILM : NO_VAPOUR)),
      numbers: () => <ScatterNumbers plant={plant} />,
      aside: () => (
        <>
          <ScatterForm />
          <GasForm />
        </>
      ),
    },
    {
      id: 'film',
      label: 'In the film',
      content: () => (coat && film ? <ContaminationPicture coat={coat} film={film} /> : missing(NO_FILM)),
      numbers: () => coat && film && <ContaminationNumbers coat={coat} film={film} />,
      aside: gasAside,
    },
    {
      id: 'pump-down',
      label: 'Pump-down',
      content: () =>
        pumping ? (
          <PumpingPicture plant={plant} pumping={pumping} measured={pumpDownRead.readings} />
        ) : (
          <NoSystem what="The pump-down" />
        ),
      numbers: () => (
        <>
          {pumping && <PumpingNumbers pumping={pumping} />}
          <PumpDownReadings read={pumpDownRead} />
        </>
      ),
      aside: () => <SystemForm />,
    },
    {
      id: 'rise',
      label: 'Rate of rise',
      content: () => <RisePicture plant={plant} rise={rise} />,
      numbers: () => <RiseNumbers rise={rise} read={riseRead} />,
      aside: () => <SystemForm />,
    },
    {
      id: 'glow',
      label: 'Glow',
      content: () =>
        glow ? (
          <GlowPicture plant={plant} glow={glow} />
        ) : pumping ? (
          missing('The pumping system has no glow discharge. Switch it on at the left.')
        ) : (
          <NoSystem what="The glow discharge" />
        ),
      numbers: () => glow && <GlowNumbers glow={glow} />,
      aside: () => <GlowForm />,
    },
  ];
}

export function VacuumStage() {
  const state = useVacuum();
  const units = useUnits();
  const tab = useVacuumView((view) => view.tab);
  const items = useMemo(() => goItems(state, units), [state, units]);
  const rooms = roomsOf(state, items);
  const room = rooms.find(({ id }) => id === tab) ?? rooms[0]!;
  return (
    <StageFrame
      sentence={<VerdictLine {...goVerdict(state, units)} />}
      aside={room.aside()}
      picture={
        <div className="vacuum-pictures">
          <Tabs
            label="Rooms of the vacuum"
            chosen={room.id}
            onChoose={(chosen) => useVacuumView.setState({ tab: chosen })}
            tabs={rooms}
          />
        </div>
      }
      numbers={
        <>
          {room.numbers()}
          <ModelNotes />
        </>
      }
      numbersLabel="Numbers of the vacuum"
    />
  );
}
