/** What each filament lays down at the probe. */
import { useEffect, useId, useRef, type KeyboardEvent } from 'react';
import type { Coat } from '../../engine/index.ts';
import type { ShownUnit } from '../../workers/picture/mapSubject.ts';
import { percent } from '../format/numbers.ts';
import { pointAt, pointAway } from '../state/pointed.ts';
import { useProbe } from '../state/probeStore.ts';
import { isSelected, select, useSelection, type Part } from '../state/selection.ts';
import { useUnits } from '../state/units.ts';
import './charts.css';
import './contributions.css';
import { contributionGroups, numberRanges, type Contribution, type ContributionGroup } from './contributions.ts';
import { lengthUnit, shownPlace, shownText, thicknessUnit } from './shownUnits.ts';

/** Filaments that get a bar of their own. */
const MOST = 12;

interface BarProps {
  readonly item: Contribution;
  /** greatest contribution of all, m */
  readonly most: number;
  readonly unit: ShownUnit;
}

function Bar({ item: { filament, thickness, share }, most, unit }: BarProps) {
  const part: Part = { kind: 'filament', set: filament.set, number: filament.number };
  const isChosen = useSelection((state) => isSelected(state, part));
  const point = (): void => pointAt(part);
  const leave = (): void => pointAway(part);
  // a bar that goes away under the pointer is not left by it
  useEffect(() => () => pointAway({ kind: 'filament', set: filament.set, number: filament.number }), [filament]);
  return (
    <li>
      <button
        type="button"
        className="contribution"
        aria-pressed={isChosen}
        title={`Select ${filament.name}`}
        onPointerEnter={point}
        onPointerLeave={leave}
        onFocus={point}
        onBlur={leave}
        onClick={() => select(part)}
      >
        <span className="contribution-name">{filament.name}</span>
        <span className="contribution-track" aria-hidden="true">
          <span className="contribution-bar" style={{ width: `${(100 * thickness) / most}%` }} />
        </span>
        <span className="contribution-value">{shownText(thickness * 1e9, unit, 2)}</span>
        <span className="contribution-share">{percent(share)}</span>
      </button>
    </li>
  );
}

/** The filaments of a set from which nothing arrives, by reason. */
function Silent({ group: { blocked, outOfUse, empty } }: { readonly group: ContributionGroup }) {
  const reasons = [
    { text: 'blocked or turned away', numbers: blocked },
    { text: 'out of use', numbers: outOfUse },
    { text: 'without charge', numbers: empty },
  ];
  return reasons
    .filter(({ numbers }) => numbers.length > 0)
    .map(({ text, numbers }) => (
      <p key={text} className="quiet">
        Nothing from {numbers.length} {text}: {numberRanges(numbers)}
      </p>
    ));
}

interface GroupProps {
  readonly group: ContributionGroup;
  readonly most: number;
  readonly unit: ShownUnit;
}

function Group({ group, most, unit }: GroupProps) {
  const { name, total, largest, rest } = group;
  const sum = ({ thickness, share }: typeof rest): string =>
    `${shownText(thickness * 1e9, unit, 2)}, ${percent(share)}`;
  return (
    <section className="contribution-group">
      <h3>
        {name} <small>{sum(total)}</small>
      </h3>
      <ul aria-label={`Largest contributions of ${name}`}>
        {largest.map((item) => (
          <Bar key={item.filament.number} item={item} most={most} unit={unit} />
        ))}
      </ul>
      {rest.count > 0 && (
        <p className="quiet">
          … and {rest.count} {largest.length > 0 ? 'more' : 'smaller ones'}: {sum(rest)}
        </p>
      )}
      <Silent group={group} />
    </section>
  );
}

/** Arrow keys go from bar to bar. */
function moveFocus(list: HTMLElement | null, event: KeyboardEvent): void {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (step === 0 || !list) return;
  const bars = [...list.querySelectorAll<HTMLButtonElement>('.contribution')];
  const next = bars[bars.findIndex((bar) => bar === document.activeElement) + step];
  if (!next) return;
  event.preventDefault();
  next.focus();
}

export function ContributionBars({ coat }: { readonly coat: Coat }) {
  const { reading } = useProbe();
  const units = useUnits();
  const list = useRef<HTMLDivElement>(null);
  const id = useId();
  const { plant } = coat;
  // the probe follows a new coat a moment later
  const isOfCoat = reading?.contributions.length === plant.filaments.length;
  const groups = reading && isOfCoat ? contributionGroups(plant, reading.contributions, MOST) : [];
  const most = Math.max(...groups.flatMap(({ largest }) => largest.map(({ thickness }) => thickness)), 0);
  return (
    <section className="panel contributions" aria-labelledby={id}>
      <div className="chart-head">
        <h2 id={id}>Filaments at the probe</h2>
        {reading && (
          <p className="quiet">
            {shownPlace(reading.position[0] - plant.shape.centerX, reading.position[1], lengthUnit(units))}:{' '}
            {shownText(reading.thickness * 1e9, thicknessUnit(units), 2)}
          </p>
        )}
      </div>
      {!reading && <p className="chart-missing">The probe is off the glass.</p>}
      <div ref={list} onKeyDown={(event) => moveFocus(list.current, event)}>
        {groups.map((group) => (
          <Group key={group.set} group={group} most={most} unit={thicknessUnit(units)} />
        ))}
      </div>
    </section>
  );
}
