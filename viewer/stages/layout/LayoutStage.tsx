/** The Layout stage: the plant on the left, its coat in the middle, the numbers on the right. */
import { useEffect } from 'react';
import { registerKeys } from '../../panels/home/keys.ts';
import { useGlobalKeys, type KeyBinding } from '../../panels/home/useGlobalKeys.ts';
import { HistoryPanel } from '../../panels/keep/HistoryPanel.tsx';
import { PartForm } from '../../panels/plant/PartForm.tsx';
import { plantKeys } from '../../panels/plant/plantKeys.ts';
import { PlantTree } from '../../panels/plant/PlantTree.tsx';
import { toggleOutOfUse } from '../../panels/plant/tree/treeActions.ts';
import { useDesign } from '../../state/designStore.ts';
import { announce } from '../../state/variants/announcement.ts';
import { StageFrame } from '../StageFrame.tsx';
import { CoatVerdict } from './CoatVerdict.tsx';
import { MassBudget } from './MassBudget.tsx';
import { Pictures } from './Pictures.tsx';
import { Statistics } from './Statistics.tsx';

function markSelected(): void {
  const refusal = toggleOutOfUse();
  announce(refusal ?? `Changed the ${useDesign.getState().past.at(-1)?.label ?? 'use'}.`);
}

const BINDINGS: readonly KeyBinding[] = [
  { keys: 'X', does: 'Take what is selected out of use, or back: filaments, sets, feeds', run: markSelected },
];

export function LayoutStage() {
  useGlobalKeys('In the Layout stage', BINDINGS);
  useEffect(() => registerKeys('In the tree of parts', plantKeys), []);
  return (
    <StageFrame
      sentence={<CoatVerdict />}
      aside={
        <>
          <PlantTree />
          <PartForm />
        </>
      }
      picture={<Pictures />}
      numbers={
        <>
          <Statistics />
          <MassBudget />
          <HistoryPanel />
        </>
      }
      numbersLabel="Numbers of the coat"
    />
  );
}
