/** The coat in the tank, face on, or beside its variants; below it the charts. */
import { lazy, useMemo, useState } from 'react';
import { sharedRangeOf } from '../../charts/mapSubject.ts';
import { MapControls } from '../../charts/MapControls.tsx';
import { SceneFigure } from '../../scene/SceneFigure.tsx';
import { useMapView } from '../../state/mapView.ts';
import { useResult } from '../../state/resultStore.ts';
import { useVariants } from '../../state/variants/variantStore.ts';
import { PinButton } from '../../panels/compare/PinButton.tsx';
import { Tabs } from '../../panels/Tabs.tsx';
import './layout.css';

// the chart has nothing to show before the first coat: it does not keep the coat waiting
const ProfileChart = lazy(async () => ({ default: (await import('../../charts/ProfileChart.tsx')).ProfileChart }));
// loaded when they are first looked at
const AreaHistogram = lazy(async () => ({ default: (await import('../../charts/AreaHistogram.tsx')).AreaHistogram }));
const ContributionBars = lazy(async () => ({
  default: (await import('../../charts/ContributionBars.tsx')).ContributionBars,
}));
const FaceMap = lazy(async () => ({ default: (await import('../../charts/FaceMap.tsx')).FaceMap }));
const Comparing = lazy(async () => ({ default: (await import('../../panels/compare/Comparing.tsx')).Comparing }));

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

export function Pictures() {
  const coat = useResult((state) => state.coat);
  const hasVariants = useVariants((state) => state.variants.length > 0);
  const [picture, setPicture] = useState<PictureView>('tank');
  const [chart, setChart] = useState<ChartView>('profile');
  const sharedRange = useSharedRange();
  const shared = sharedRange && { sharedRange };
  return (
    <div className="coat-pictures" data-view={picture}>
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
