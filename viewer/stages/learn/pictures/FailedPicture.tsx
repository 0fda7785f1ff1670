/** Filaments that stay cold, and what is then missing over the mirror. */
import { useCallback, useId, useMemo, useState } from 'react';
import type { Coat } from '../../../../engine/index.ts';
import { coatMap } from '../../../../workers/picture/coatMap.ts';
import { decimalsOf, extentOf, roundScale } from '../../../../workers/picture/valueScale.ts';
import { describeMap } from '../../../charts/describeMap.ts';
import { MapPlate } from '../../../charts/MapPlate.tsx';
import { lengthUnit, thicknessUnit } from '../../../charts/shownUnits.ts';
import { useUnits } from '../../../state/units.ts';
import { failedCoat, feedOf, missingShare, type FailedFacts } from '../facts/failed.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn } from '../say.ts';
import { useLatest } from './useLatest.ts';

const PERCENT = { unit: '%', factor: 1 };

function useMissing(full: Coat, coat: Coat) {
  const units = useUnits();
  return useMemo(() => {
    const values = missingShare(full, coat).map((share) => 100 * share);
    return coatMap(
      coat,
      { values, label: 'Missing', unit: '%' },
      {
        scale: roundScale([0, Math.max(1, extentOf(values)[1])]),
        valueOf: null,
        unit: PERCENT,
        thicknessUnit: thicknessUnit(units),
        lengthUnit: lengthUnit(units),
      },
    );
  }, [full, coat, units]);
}

export function FailedPicture({ facts, tools, isOpen }: PictureProps<FailedFacts>) {
  const id = useId();
  const say = sayIn(useUnits());
  const { plant, full } = facts;
  const [chosen, setChosen] = useState(facts.cold);
  const [isFeed, setIsFeed] = useState(false);
  const cold = useMemo(() => (isFeed ? feedOf(plant, chosen) : [chosen]), [plant, chosen, isFeed]);
  const hasFeed = feedOf(plant, chosen).length > 1;
  const compute = useCallback(async () => failedCoat(tools, plant, cold), [tools, plant, cold]);
  const { value: coat, isWorking, failure } = useLatest(isOpen ? facts.failed : full, isOpen ? compute : null);
  const shown = isOpen ? coat : full;
  const subject = useMissing(full, shown);
  const { uniformity, mean, minimum } = shown.statistics;
  const most = Math.max(...subject.values) / 100;
  return (
    <section className="panel face-map learn-map" aria-labelledby={id} aria-busy={isWorking}>
      <div className="chart-head">
        <h3 id={id}>
          {isOpen ? 'What is missing' : 'All filaments fire'} <small>share of the coat, face on</small>
        </h3>
        <label className="check">
          Cold
          <select value={chosen} disabled={!isOpen} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
            {plant.filaments.map(({ name, charge, outOfUse }, i) =>
              charge > 0 && !outOfUse ? (
                <option key={name} value={i}>
                  {name}
                </option>
              ) : null,
            )}
          </select>
        </label>
        <label className="check">
          <input
            type="checkbox"
            checked={isFeed && hasFeed}
            disabled={!isOpen || !hasFeed}
            onChange={(event) => setIsFeed(event.currentTarget.checked)}
          />
          {hasFeed ? `its whole feed, ${feedOf(plant, chosen).length} filaments` : 'no feed shared with others'}
        </label>
      </div>
      <MapPlate subject={subject} description={describeMap(shown, subject, decimalsOf(subject.scale.ticks) + 1)} />
      <p className="learn-result" role="status">
        {failure ??
          `${isOpen ? `${say.percent(most)} missing at the worst place; ` : ''}mean ${say.thickness(mean.value)}, thinnest ${say.thickness(minimum.value)}, ±${say.percent(uniformity.value)} even`}
      </p>
    </section>
  );
}
