/** The numbers of the film: light, opaqueness, oxide, figure. */
import { useMemo } from 'react';
import { FILM_ASSUMPTIONS } from '../../../engine/film/assumptions.ts';
import type { Comparison } from '../../../engine/film/lightLost.ts';
import type { FilmReport } from '../../../engine/film/filmReport.ts';
import type { Coat, Estimate } from '../../../engine/index.ts';
import { lengthUnit, shownDecimals, shownText, thicknessUnit } from '../../charts/shownUnits.ts';
import { estimateText, estimate_percent, fixed, percent, signedPercent } from '../../format/numbers.ts';
import type { ShownUnit } from '../../../workers/picture/mapSubject.ts';
import { NumbersTable, type NumberRow } from '../../panels/NumbersTable.tsx';
import { useUnits } from '../../state/units.ts';

interface FilmNumbersProps {
  readonly coat: Coat;
  readonly report: FilmReport;
}

const NM = 1e9;
const inPercent = (estimate: Estimate): Pick<NumberRow, 'value' | 'error' | 'unit'> => ({
  ...estimate_percent(estimate),
  unit: '%',
});

function lightRows({ reflectance, thinnest, mean, thickest, lightLost }: FilmReport): NumberRow[] {
  const at = (label: string, reflected: number): NumberRow => ({
    label,
    value: fixed(100 * reflected, 2),
    unit: '%',
  });
  return [
    { label: 'Mean reflectance', help: 'over the clear aperture, as starlight meets it', ...inPercent(reflectance) },
    at('At the thinnest place', thinnest.reflected),
    at('At the mean thickness', mean.reflected),
    at('At the thickest place', thickest.reflected),
    {
      label: 'Let through at the thinnest place',
      value: (100 * thinnest.transmitted).toPrecision(2),
      unit: '%',
    },
    { label: 'Perfect fresh coat', help: 'opaque, bare, smooth', value: fixed(100 * lightLost.perfect, 2), unit: '%' },
  ];
}

function comparisonRows(
  { throughput, diameterLost, exposureRatio }: Comparison,
  mirrors: number,
  unit: ShownUnit,
): NumberRow[] {
  const decimals = Math.max(0, 4 - Math.max(0, Math.ceil(Math.log10(unit.factor))));
  return [
    {
      label: 'Light',
      help: `after ${mirrors} reflection${mirrors === 1 ? '' : 's'}`,
      ...inPercent(throughput),
    },
    {
      label: 'As if smaller across by',
      help: 'diameter of an equally good mirror with the other coat',
      value: fixed(diameterLost * unit.factor, decimals),
      unit: unit.unit,
    },
    { label: 'Exposures longer by', value: signedPercent(exposureRatio - 1, 2).replace(' %', ''), unit: '%' },
  ];
}

function opaqueRows({ opaque }: FilmReport, unit: ShownUnit): NumberRow[] {
  return opaque.map(({ criterion, thickness, isMet }) => ({
    label: criterion.name,
    help: criterion.source,
    detail: isMet ? 'met' : 'not met',
    value: Number.isFinite(thickness) ? fixed(thickness * NM * unit.factor, shownDecimals(unit, 0)) : 'never',
    unit: Number.isFinite(thickness) ? unit.unit : '',
  }));
}

const DAY = 86_400;

function ageText(seconds: number): string {
  if (seconds < DAY) return `${Math.round(seconds / 3600)} h`;
  const days = seconds / DAY;
  return days < 365 ? `${Math.round(days)} d` : `${Math.round(days / 365.25)} a`;
}

function ageingRows({ ageing }: FilmReport, unit: ShownUnit): NumberRow[] {
  return ageing.map(({ time, oxide, reflected }) => ({
    label: `After ${ageText(time)}`,
    detail: `oxide ${shownText(oxide.value * NM, unit, 1)} ± ${shownText(oxide.error * NM, unit, 1)}`,
    value: fixed(100 * reflected, 2),
    unit: '%',
  }));
}

function figureRows({ figure }: FilmReport, unit: ShownUnit): NumberRow[] {
  const length = (label: string, estimate: Estimate, detail?: string): NumberRow => ({
    label,
    ...(detail === undefined ? {} : { detail }),
    ...estimateText(estimate, NM * unit.factor, shownDecimals(unit, 2)),
    unit: unit.unit,
  });
  const { asCoated, corrected, wavelength, strehl, focusShift, removed } = figure;
  const after = removed.length === 0 ? 'mean taken off' : `without ${removed.join(' and ')}`;
  return [
    length('Surface, peak to valley', asCoated.surface.peakToValley, 'as coated'),
    length('Wavefront, peak to valley', asCoated.wavefront.peakToValley, 'as coated'),
    length('Wavefront, rms', corrected.wavefront.rms, after),
    {
      label: 'Wavefront, rms in waves',
      detail: `at ${Number((wavelength * NM).toPrecision(6))} nm`,
      value: (corrected.wavefront.rms.value / wavelength).toPrecision(2),
    },
    { label: 'Strehl ratio', help: 'peak of a point’s image against a perfect coat’s', value: fixed(strehl, 4) },
    ...(focusShift === null
      ? []
      : [
          {
            label: 'Focus moves by',
            help: 'toward the filaments if positive',
            value: fixed(focusShift * 1e6, 2),
            unit: 'µm',
          },
        ]),
  ];
}

export function FilmNumbers({ coat, report }: FilmNumbersProps) {
  const units = useUnits();
  const thin = useMemo(() => thicknessUnit(units), [units]);
  const { lightLost } = report;
  const length = lengthUnit(units);
  return (
    <>
      <NumbersTable
        caption="Reflectance"
        captionDetail={report.angle > 0 ? `${report.light}, both polarisations` : report.light}
        labelHeading={coat.plant.film.overcoat ? 'under its overcoat' : 'over the clear aperture'}
        rows={lightRows(report)}
      />
      <NumbersTable
        caption="Against a perfect fresh coat"
        captionDetail={lightLost.mirrors === 1 ? 'one reflection' : `${lightLost.mirrors} reflections`}
        labelHeading="scatter taken off"
        rows={comparisonRows(lightLost.againstPerfect, lightLost.mirrors, length)}
      />
      {lightLost.againstLastYear && (
        <NumbersTable
          caption="Against last year’s coat"
          labelHeading="scatter taken off"
          rows={comparisonRows(lightLost.againstLastYear, lightLost.mirrors, length)}
        />
      )}
      <NumbersTable caption="Figure" labelHeading="over the clear aperture" rows={figureRows(report, thin)}>
        <p>{report.figure.sentence}</p>
      </NumbersTable>
      <NumbersTable
        caption="Opaque from"
        labelHeading="criterion, and whether the thinnest place meets it"
        rows={opaqueRows(report, thin)}
      />
      <NumbersTable
        caption="In air"
        captionDetail="mean thickness"
        labelHeading="time since venting"
        rows={ageingRows(report, thin)}
      />
      <details className="panel film-assumptions">
        <summary>What the film’s numbers assume</summary>
        <ul>
          {FILM_ASSUMPTIONS.map(({ statement, formula, source }) => (
            <li key={statement}>
              {statement} {formula !== undefined && formula !== '' && <code>{formula}</code>} <small>{source}</small>
            </li>
          ))}
        </ul>
        <p className="quiet">{percent(report.mapError, 6)} is the error of the map against the exact formula.</p>
      </details>
    </>
  );
}
