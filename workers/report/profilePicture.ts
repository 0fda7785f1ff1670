/** Thickness against radius, with the tolerance about the mean and the target. */
import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { Explanation } from '../../engine/explain/explainCoat.ts';
import { limit, thick } from '../../engine/explain/words.ts';
import { label, n, path, picture, WIDTH } from './drawing.ts';

const HEIGHT = 216;
const LEFT = 40;
const RIGHT = 12;
const TOP = 24;
const BOTTOM = 34;
/** Room above and below what is drawn, share of its range. */
const ROOM = 0.08;
/** Width of the band's name; a curve this far from it doesn't matter. */
const NAME = 100;
const FAR = 24;
const NM = 1e9;

/** Place for the band's name, out of those given, that lies farthest from the curve; the first of equals. */
function freest(
  places: readonly (readonly number[])[],
  curve: readonly (readonly [number, number])[],
): readonly [number, number] {
  const gap = ([left = 0, base = 0]: readonly number[]): number =>
    Math.min(
      FAR,
      ...curve.filter(([cx]) => cx > left - 6 && cx < left + NAME + 6).map(([, cy]) => Math.abs(cy - (base - 4))),
    );
  const best = places.reduce((found, place) => (gap(place) > gap(found) ? place : found));
  return [best[0]!, best[1]!];
}

/** The profile of a coat; of azimuths, its band from thinnest to thickest. */
export function profilePicture({ coat }: Explanation): string {
  const { profile, statistics, plant } = coat;
  const { mean, minimum, maximum } = statistics;
  const { target, tolerance } = plant.film;
  const last = profile.radius.at(-1) ?? 1;
  const [inside, outside] = [1 - tolerance, 1 + tolerance].map((factor) => NM * mean.value * factor) as [
    number,
    number,
  ];
  const low = Math.min(NM * minimum.value, inside, NM * target);
  const high = Math.max(NM * maximum.value, outside, NM * target);
  const room = ROOM * (high - low);
  const x = scaleLinear([0, last], [LEFT, WIDTH - RIGHT]);
  const y = scaleLinear([Math.max(0, low - room), high + room], [HEIGHT - BOTTOM, TOP]);
  const indices = Array.from(profile.radius.keys()).filter((i) => !Number.isNaN(profile.mean[i]));
  const atX = (i: number): number => x(profile.radius[i]!);
  const mid = line<number>(atX, (i) => y(NM * profile.mean[i]!))(indices) ?? '';
  const band =
    area<number>(
      atX,
      (i) => y(NM * profile.minimum[i]!),
      (i) => y(NM * profile.maximum[i]!),
    )(indices) ?? '';
  const isSmall = plant.shape.rimRadius < 0.3;
  const xTicks = x.ticks(6);
  const yTicks = y.ticks(5);
  const start = x(profile.radius[0] ?? 0);
  const curve = indices.map((i): readonly [number, number] => [atX(i), y(NM * profile.mean[i]!)]);
  const [freeX, freeY] = freest(
    [LEFT + 60, (LEFT + WIDTH) / 2 - 46, WIDTH - RIGHT - NAME].flatMap((left) => [
      [left, y(outside) + 13],
      [left, y(inside) - 4],
    ]),
    curve,
  );
  return picture(
    HEIGHT,
    `Thickness against radius: ${thick(minimum.value)} to ${thick(maximum.value)}; within ±${limit(tolerance)} of the average of ${thick(mean.value)} between ${n(inside)} and ${n(outside)} nm`,
    [
      `<rect class="tolerance" x="${LEFT}" y="${n(y(outside))}" width="${WIDTH - RIGHT - LEFT}" height="${n(y(inside) - y(outside))}"/>`,
      ...yTicks.map((tick) => path(`M${LEFT} ${n(y(tick))}H${WIDTH - RIGHT}`, 'grid')),
      path(`M${LEFT} ${n(y(NM * target))}H${WIDTH - RIGHT}`, 'target'),
      path(band, 'band'),
      path(mid, 'curve'),
      start > LEFT + 4 ? path(`M${n(start)} ${n(y.range()[1]!)}V${n(y.range()[0]!)}`, 'zero') : '',
      path(`M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}`, 'axis'),
      ...yTicks.map((tick) => label(LEFT - 5, y(tick) + 4, String(tick), { anchor: 'end', kind: 'quiet' })),
      ...xTicks.map((tick) =>
        label(x(tick), HEIGHT - BOTTOM + 15, isSmall ? String(Math.round(1e3 * tick)) : tick.toFixed(1), {
          anchor: 'middle',
          kind: 'quiet',
        }),
      ),
      label(LEFT, 13, 'Thickness, nm', { kind: 'quiet' }),
      label(WIDTH - RIGHT, HEIGHT - 4, `radius, ${isSmall ? 'mm' : 'm'}`, { anchor: 'end', kind: 'quiet' }),
      mean.value > 0 ? label(freeX, freeY, `average ±${limit(tolerance)}`, { kind: 'halo' }) : '',
      label(LEFT + 4, y(NM * target) - 3, 'ordered', { kind: 'quiet small' }),
      start > LEFT + 24
        ? label((LEFT + start) / 2, HEIGHT - BOTTOM - 6, 'hole', { anchor: 'middle', kind: 'quiet' })
        : '',
    ],
  );
}
