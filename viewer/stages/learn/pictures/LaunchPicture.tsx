/** Atoms launched one by one. */
import { Play, RotateCcw, StepForward } from 'lucide-react';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useUnits } from '../../../state/units.ts';
import { nextCorner, type Flight } from '../facts/flights.ts';
import type { StraightFacts } from '../facts/straight.ts';
import type { PictureProps } from '../lesson.ts';
import { sayIn, type Say } from '../say.ts';
import { TracksScene } from './TracksScene.tsx';
import { trackLines } from './trackLines.ts';

/** How long one atom is shown on its way, ms. */
const SHOWN = 900;
const prefersStillness = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

const LANDINGS = {
  mirror: 'stuck to the mirror',
  wall: 'stuck to the wall',
  elsewhere: 'stuck to something else',
} as const;

/** What became of an atom. */
function fate({ length, collisions, landing }: Flight, number: number, speed: number, say: Say): string {
  const way =
    collisions === 0
      ? 'straight'
      : collisions === 1
        ? 'bent once by a molecule'
        : `bent ${collisions} times by molecules`;
  const time = collisions === 0 ? `, about ${say.time(length / speed)} on its way` : '';
  return `Atom ${number}: ${say.length(length)}, ${way}, ${LANDINGS[landing]}${time}.`;
}

/** Progress that runs to a goal, at once where motion is not wanted. */
function useProgress() {
  const [progress, setProgress] = useState(0);
  const frame = useRef(0);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);
  const stop = (): void => cancelAnimationFrame(frame.current);
  const runTo = (goal: number): void => {
    stop();
    if (prefersStillness()) return setProgress(goal);
    const [from, start] = [progress, performance.now()];
    const advance = (): void => {
      const share = Math.min(1, (performance.now() - start) / SHOWN);
      setProgress(share === 1 ? goal : from + share * (goal - from));
      if (share < 1) frame.current = requestAnimationFrame(advance);
    };
    advance();
  };
  return { progress, runTo, jump: (to: number) => (stop(), setProgress(to)) };
}

export function LaunchPicture({ bench, facts, isOpen }: PictureProps<StraightFacts>) {
  const say = sayIn(useUnits());
  const { flights } = facts;
  const { progress, runTo, jump } = useProgress();
  const shown = isOpen ? Math.min(progress, flights.length) : 0;
  const whole = Math.floor(shown + 1e-9);
  const lines = useMemo(() => trackLines(flights, shown), [flights, shown]);
  const met = flights.slice(0, whole).filter(({ collisions }) => collisions > 0).length;
  const onMirror = flights.slice(0, whole).filter(({ landing }) => landing === 'mirror').length;
  const last = flights[whole - 1];
  const isDone = whole >= flights.length;
  const step = (): void => {
    const flight = flights[whole];
    if (!flight) return;
    const share = nextCorner(flight, shown - whole);
    jump(share > 1 - 1e-9 ? whole + 1 : whole + share);
  };
  const summary = `${whole} of ${flights.length} launched: ${met} met a molecule, ${onMirror} stuck to the mirror.`;
  return (
    <section className="panel learn-picture learn-launch" aria-label="Atoms in the tank">
      <TracksScene
        plant={bench.plant}
        lines={lines}
        description={`Tank, mirror and filaments in 3D with the tracks of atoms. ${summary} ${last ? fate(last, whole, facts.speed, say) : ''}`}
      />
      <div className="learn-buttons no-print">
        <button type="button" disabled={!isOpen || isDone} onClick={() => runTo(whole + 1)}>
          <Play aria-hidden="true" size={16} /> Launch an atom
        </button>
        <button type="button" disabled={!isOpen || isDone} onClick={() => runTo(Math.min(flights.length, whole + 10))}>
          <Play aria-hidden="true" size={16} /> Launch ten
        </button>
        <button type="button" disabled={!isOpen || isDone} onClick={step}>
          <StepForward aria-hidden="true" size={16} /> Step
        </button>
        <button type="button" disabled={!isOpen || shown === 0} onClick={() => jump(0)}>
          <RotateCcw aria-hidden="true" size={16} /> Clear
        </button>
      </div>
      <p className="learn-result" role="status">
        {isOpen
          ? shown > whole
            ? `Atom ${whole + 1} is on its way.`
            : last
              ? fate(last, whole, facts.speed, say)
              : 'No atom has left yet.'
          : 'The filaments are still cold.'}
      </p>
      {isOpen && (
        <p className="quiet">
          {summary} Straight tracks are coloured; bent ones are plain, with a dot at each collision.
        </p>
      )}
    </section>
  );
}
