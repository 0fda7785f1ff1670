/** Two designs side by side: what the change brought, where, and what it was. */
import { ArrowLeftRight, ArrowUpToLine } from 'lucide-react';
import { useEffect, useMemo, type ReactNode } from 'react';
import type { Coat } from '../../../engine/index.ts';
import { differencesOf } from '../../format/differences.ts';
import { announce } from '../../state/variants/announcement.ts';
import { compare, CURRENT, restoreVariant, swapCompared } from '../../state/variants/variantStore.ts';
import { useUnits } from '../../state/units.ts';
import './compare.css';
import { useComparedDesigns, useComparedPair, type ComparedDesign } from './comparedDesigns.ts';
import { DifferenceList } from './DifferenceList.tsx';
import { headlineOf } from './headline.ts';

/** A side of the comparison whose coat is known. */
export interface ComparedCoat {
  readonly name: string;
  readonly coat: Coat;
}

type Picture = (a: ComparedCoat, b: ComparedCoat) => ReactNode;

interface CompareViewProps {
  /** where B is thicker or thinner than A */
  readonly differenceMap?: Picture | undefined;
  /** both radial profiles in one plot */
  readonly profiles?: Picture | undefined;
}

interface SideProps {
  readonly side: 'a' | 'b';
  readonly chosen: ComparedDesign;
  readonly designs: readonly ComparedDesign[];
}

function Side({ side, chosen, designs }: SideProps) {
  const letter = side.toUpperCase();
  return (
    <div className="compare-side">
      <label>
        <b>{letter}</b>
        <select value={chosen.id} onChange={(event) => compare(side, event.target.value)}>
          {designs.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      {chosen.id !== CURRENT && (
        <button
          type="button"
          className="icon"
          aria-label={`Make ${letter}, ${chosen.name}, the current design`}
          title={`Make ${letter} the current design (can be undone)`}
          onClick={() => restoreVariant(chosen.id)}
        >
          <ArrowUpToLine aria-hidden="true" size={16} />
        </button>
      )}
    </div>
  );
}

/** Why there is no comparison of coats yet. */
function missingText(sides: readonly ComparedDesign[]): string {
  const names = sides.filter(({ coat }) => !coat).map(({ name }) => name);
  return `The coat of ${names.join(' and that of ')} is not computed yet.`;
}

function Comparison({ a, b, differenceMap, profiles }: CompareViewProps & Record<'a' | 'b', ComparedDesign>) {
  const units = useUnits();
  const differences = useMemo(() => differencesOf(a.snapshot, b.snapshot), [a.snapshot, b.snapshot]);
  const [first, second] = [a.coat, b.coat];
  const headline = useMemo(() => first && second && headlineOf(first, second, units), [first, second, units]);
  const isBusy = [a, b].some(({ phase }) => phase === 'computing');
  const pictures =
    first &&
    second &&
    [differenceMap, profiles].map((draw) => draw?.({ name: a.name, coat: first }, { name: b.name, coat: second }));
  return (
    <>
      <div className="compare-headline" role="status" aria-busy={isBusy}>
        <p className="compare-sentence">{headline ? headline.sentence : missingText([a, b])}</p>
        {headline?.second && <p className="compare-second">{headline.second}</p>}
      </div>
      <div className="compare-body">
        {pictures?.some((picture) => picture) && (
          <div className="compare-pictures">
            {pictures[0] && <div className="compare-picture">{pictures[0]}</div>}
            {pictures[1] && <div className="compare-picture">{pictures[1]}</div>}
          </div>
        )}
        <div className="compare-differences">
          <h3>From A to B</h3>
          <DifferenceList differences={differences} />
        </div>
      </div>
    </>
  );
}

export function CompareView({ differenceMap, profiles }: CompareViewProps) {
  const designs = useComparedDesigns();
  const pair = useComparedPair();
  const names = pair && `${pair.a.name} against ${pair.b.name}`;
  useEffect(() => {
    if (names !== null) announce(`Comparing ${names}.`);
  }, [names]);
  return (
    <section className="panel compare" aria-labelledby="compare-title">
      <h2 id="compare-title" className="visually-hidden">
        Comparison
      </h2>
      {pair ? (
        <>
          <div className="compare-head">
            <Side side="a" chosen={pair.a} designs={designs} />
            <button
              type="button"
              className="icon"
              aria-label="Swap A and B"
              title="Swap A and B"
              onClick={swapCompared}
            >
              <ArrowLeftRight aria-hidden="true" size={16} />
            </button>
            <Side side="b" chosen={pair.b} designs={designs} />
          </div>
          <Comparison {...pair} differenceMap={differenceMap} profiles={profiles} />
        </>
      ) : (
        <p className="variants-none">There is nothing to compare with: pin the current design first.</p>
      )}
    </section>
  );
}
