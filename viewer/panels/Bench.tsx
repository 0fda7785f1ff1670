/** The Layout stage: the plant on the left, its coat in the middle, the numbers on the right. */
import { lazy, useEffect, useMemo, useState } from 'react';
import { sharedRangeOf } from '../charts/mapSubject.ts';
import { MapControls } from '../charts/MapControls.tsx';
import { ProfileChart } from '../charts/ProfileChart.tsx';
import { SceneFigure } from '../scene/SceneFigure.tsx';
import { useMapView } from '../state/mapView.ts';
import { useResult } from '../state/resultStore.ts';
import { useVariants } from '../state/variants/variantStore.ts';
import { PinButton } from './compare/PinButton.tsx';
import { registerKeys } from './home/keys.ts';
import { HistoryPanel } from './keep/HistoryPanel.tsx';
import { MassBudget } from './MassBudget.tsx';
import { PartForm } from './plant/PartForm.tsx';
import { plantKeys } from './plant/plantKeys.ts';
import { PlantTree } from './plant/PlantTree.tsx';
import { Statistics } from './Statistics.tsx';
import { Tabs } from './Tabs.tsx';

// loaded when they are first looked at
const AreaHistogram = lazy(async () => ({ default: (await import('../charts/AreaHistogram.tsx')).AreaHistogram }));
const ContributionBars = lazy(async () => ({
  default: (await import('../charts/ContributionBars.tsx')).ContributionBars,
}));
const FaceMap = lazy(async () => ({ default: (await import('../charts/FaceMap.tsx')).FaceMap }));
const Comparing = lazy(async () => ({ default: (await import('./compare/Comparing.tsx')).Comparing }));

type PictureView = 'tank' | 'face' | 'compare';
type ChartView = 'profile' | 'area' | 'filaments';

/** The range of the mapped quantity over the coat on the page and all variants. */
function useSharedRange() {
  const coat = useResult((state) => state.coat);
  const variants = useVariants((state) => state.variants);
  const quantity = useMapView((state) => state.quantity);
  return useMemo(() => {
    const coats = [coat, ...variants.map((variant) => variant.coat)].flatMap((item) => item ?? []);
    return sharedRangeOf(coats, quantity);
  }, [coat, variants, quantity]);
}

function Pictures() {
  const coat = useResult((state) => state.coat);
  const hasVariants = useVariants((state) => state.variants.length > 0);
  const [picture, setPicture] = useState<PictureView>('tank');
  const [chart, setChart] = useState<ChartView>('profile');
  const sharedRange = useSharedRange();
  const shared = sharedRange && { sharedRange };
  return (
    <div className="picture" data-view={picture}>
      <Tabs
        label="Picture of the coat"
        chosen={picture}
        onChoose={setPicture}
        tabs={[
          { id: 'tank', label: 'In the tank', content: () => <SceneFigure {...shared} /> },
          {
            id: 'face',
            label: 'Face on',
            content: () =>
              coat && (
                <FaceMap coat={coat} {...shared}>
                  <MapControls coat={coat} hasVariants={hasVariants} />
                </FaceMap>
              ),
          },
          {
            id: 'compare',
            label: 'Variants',
            content: () => <Comparing />,
          },
        ]}
      >
        {picture !== 'compare' && <PinButton />}
      </Tabs>
      {picture !== 'compare' && (
        <Tabs
          label="Charts of the coat"
          chosen={chart}
          onChoose={setChart}
          tabs={[
            { id: 'profile', label: 'Radial profile', content: () => coat && <ProfileChart coat={coat} /> },
            { id: 'area', label: 'Area by thickness', content: () => coat && <AreaHistogram coat={coat} /> },
            {
              id: 'filaments',
              label: 'Filaments at the probe',
              content: () => coat && <ContributionBars coat={coat} />,
            },
          ]}
        />
      )}
    </div>
  );
}

export function Bench() {
  useEffect(() => registerKeys('In the tree of parts', plantKeys), []);
  return (
    <>
      <div className="plant-column">
        <PlantTree />
        <PartForm />
      </div>
      <Pictures />
      {/* it scrolls, so the keyboard must reach it */}
      <div className="side" role="region" aria-label="Numbers of the coat" tabIndex={0}>
        <Statistics />
        <MassBudget />
        <HistoryPanel />
      </div>
    </>
  );
}
