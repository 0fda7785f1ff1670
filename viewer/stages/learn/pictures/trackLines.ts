/** Flights as lines to draw. */
import { partOfFlight, type Flight } from '../facts/flights.ts';
import type { TrackLines } from './tracksView.ts';

/** Corners between start and end: the collisions. */
const insideOf = (corners: readonly number[]): readonly number[] => corners.slice(3, -3);

/**
 * The first flights whole and the next one in part.
 *
 * @param progress flights: 3.4 is three whole ones and 0.4 of the fourth's way
 */
export function trackLines(flights: readonly Flight[], progress: number): TrackLines {
  const whole = Math.min(flights.length, Math.floor(progress + 1e-9));
  const straight: number[][] = [];
  const bent: number[][] = [];
  const collisions: number[] = [];
  const heads: number[] = [];
  const add = (flight: Flight, corners: number[]): void => {
    (flight.collisions === 0 ? straight : bent).push(corners);
    collisions.push(...insideOf(corners));
  };
  for (const flight of flights.slice(0, whole)) {
    const corners = [...flight.points];
    add(flight, corners);
    if (flight.landing === 'mirror') heads.push(...corners.slice(-3));
  }
  const next = flights[whole];
  const share = progress - whole;
  if (next && share > 1e-9) {
    const corners = partOfFlight(next, share);
    add(next, corners);
    heads.push(...corners.slice(-3));
  }
  return { straight, bent, collisions, heads };
}
