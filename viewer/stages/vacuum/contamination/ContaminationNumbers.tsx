/** Foreign molecules in the film, what they mean, and what to go for. */
import { CONTAMINATION_BANDS, RECOMMENDED, STICKING } from '../../../../engine/gas/contamination.ts';
import { inUnit, type Coat } from '../../../../engine/index.ts';
import { scientific } from '../../../format/scientific.ts';
import { NumbersTable, type NumberRow } from '../../../panels/NumbersTable.tsx';
import { useUnits, type Units } from '../../../state/units.ts';
import { gasWord, mixtureOf } from '../gas/residualGas.ts';
import { durationText } from '../vacuumText.ts';
import type { GasName } from '../../../../engine/gas/gases.ts';
import type { ContaminationCase } from '../../../../engine/vacuum/contaminationCase.ts';

interface ContaminationNumbersProps {
  readonly coat: Coat;
  readonly film: ContaminationCase;
}

function ratioRows(film: ContaminationCase, units: Units): NumberRow[] {
  const rate = (value: number): string => scientific(inUnit(value, 'length', units.thickness), 3);
  const perSecond = `${units.thickness}/s`;
  return [
    {
      label: 'At the thinnest place',
      detail: film.band.name,
      help: 'molecules of the gas that stick for each aluminium atom that arrives',
      value: scientific(film.worst, 2),
    },
    { label: 'At the mean thickness', value: scientific(film.mean, 2) },
    { label: 'Film grows at the thinnest place', value: rate(film.leastRate), unit: perSecond },
    { label: 'Film grows on average', value: rate(film.meanRate), unit: perSecond },
  ];
}

function goRows({ recommendation: { pressure, rate, isKept } }: ContaminationCase, units: Units): NumberRow[] {
  return [
    {
      label: 'Pressure at most',
      detail: 'at this rate',
      value: scientific(inUnit(pressure, 'pressure', units.pressure), 2),
      unit: units.pressure,
    },
    {
      label: 'Film grows at least',
      detail: 'at this pressure',
      value: scientific(inUnit(rate, 'length', units.thickness), 2),
      unit: `${units.thickness}/s`,
    },
    { label: 'This shot keeps to both', value: isKept ? 'yes' : 'no' },
  ];
}

/** Pa·m³ in a unit of practice. */
const LITRES = 1e3;

function getteredRows({ gettered, freshArea, duration }: ContaminationCase, units: Units): NumberRow[] {
  return [
    {
      label: 'Gas taken up',
      detail: `in ${durationText(duration)}`,
      help: 'at the pressure of the shot, everywhere',
      value: scientific(inUnit(gettered.quantity, 'pressure', units.pressure) * LITRES, 2),
      unit: `${units.pressure} l`,
    },
    {
      label: 'Fresh film pumps at most',
      detail: `${scientific(freshArea, 3)} m²`,
      help: 'wall of the tank and face of the mirror, every molecule of water and oxygen sticking',
      value: scientific(gettered.speed * LITRES, 2),
      unit: 'l/s',
    },
  ];
}

function Bands({ film }: { readonly film: ContaminationCase }) {
  return (
    <section className="panel" aria-label="What the ratio means">
      <table className="numbers vacuum-bands">
        <caption>What the ratio means</caption>
        <thead>
          <tr>
            <th scope="col">band</th>
            <th scope="col">up to</th>
            <th scope="col">the film</th>
          </tr>
        </thead>
        <tbody>
          {CONTAMINATION_BANDS.map(({ name, upTo, meaning, source }) => (
            <tr key={name} data-present={name === film.band.name || undefined}>
              <th scope="row">
                {name} {name === film.band.name && <small>this shot</small>}
              </th>
              <td>{Number.isFinite(upTo) ? scientific(upTo) : '–'}</td>
              <td>
                {meaning} <small>{source}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

export function ContaminationNumbers({ coat, film }: ContaminationNumbersProps) {
  const units = useUnits();
  const names = Object.keys(mixtureOf(coat.plant.vacuum)) as GasName[];
  return (
    <>
      <NumbersTable
        caption="Foreign molecules"
        captionDetail="per aluminium atom"
        labelHeading="over the whole shot"
        rows={ratioRows(film, units)}
      >
        <p>
          Sticking:{' '}
          {names
            .map((name) => `${gasWord(name)} ${scientific(STICKING[name].share)} (${STICKING[name].source})`)
            .join('; ')}
          .
        </p>
      </NumbersTable>
      <NumbersTable caption="To go for" labelHeading="for a clean film" rows={goRows(film, units)}>
        <p>
          The stricter of a ratio of {scientific(CONTAMINATION_BANDS[0]!.upTo)} and practice; {RECOMMENDED.source}.
        </p>
      </NumbersTable>
      <Bands film={film} />
      <NumbersTable caption="Gettered" labelHeading="by the fresh film" rows={getteredRows(film, units)}>
        <p>An upper bound: the gas is not thinned where the film takes it up.</p>
      </NumbersTable>
    </>
  );
}
