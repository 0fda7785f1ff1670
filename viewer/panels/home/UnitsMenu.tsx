/** Chooses the unit of each kind of quantity. */
import { Ruler } from 'lucide-react';
import { useId, useRef, type ToggleEvent } from 'react';
import { announce } from '../../state/variants/announcement.ts';
import { setUnit, UNIT_CHOICES, useUnits, type UnitKind } from '../../state/units.ts';
import './home.css';

const WORDS: Readonly<Record<UnitKind, string>> = {
  length: 'Lengths',
  thickness: 'Thickness',
  mass: 'Masses',
  pressure: 'Pressure',
  temperature: 'Temperature',
};
/** Units as people write them. */
const SHOWN: Readonly<Record<string, string>> = { degC: '°C', degF: '°F', in: 'in (inch)', ft: 'ft (foot)' };
/** Room between the button and its menu, and between the menu and the window's edge, px. */
const GAP = 8;

const KINDS = Object.keys(UNIT_CHOICES) as UnitKind[];

/** One choice for each kind of quantity. */
function UnitsFields() {
  const units = useUnits();
  const id = useId();
  return (
    <div className="units-fields" role="group" aria-label="Units">
      {KINDS.map((kind) => (
        <div key={kind}>
          <label htmlFor={`${id}-${kind}`}>{WORDS[kind]}</label>
          <select
            id={`${id}-${kind}`}
            value={units[kind]}
            onChange={(event) => {
              setUnit(kind, event.target.value);
              announce(`${WORDS[kind]} in ${SHOWN[event.target.value] ?? event.target.value}.`);
            }}
          >
            {UNIT_CHOICES[kind].map((unit) => (
              <option key={unit} value={unit}>
                {SHOWN[unit] ?? unit}
              </option>
            ))}
          </select>
        </div>
      ))}
    </div>
  );
}

/** A button that opens the choices; Escape or a press elsewhere closes them. */
export function UnitsMenu() {
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const place = (event: ToggleEvent<HTMLDivElement>): void => {
    if (event.newState !== 'open' || !button.current) return;
    const { bottom, right } = button.current.getBoundingClientRect();
    const menu = event.currentTarget;
    menu.style.top = `${bottom + GAP}px`;
    menu.style.left = `${Math.max(GAP, right - menu.offsetWidth)}px`;
    menu.querySelector('select')?.focus();
  };
  return (
    <>
      <button ref={button} type="button" className="short" title="Units" popoverTarget={id} aria-haspopup="dialog">
        <Ruler aria-hidden="true" size={16} /> <span>Units</span>
      </button>
      <div id={id} popover="auto" role="dialog" aria-label="Units" className="units-menu" onToggle={place}>
        <UnitsFields />
        <p className="quiet">Files keep the units that they were written in.</p>
      </div>
    </>
  );
}
