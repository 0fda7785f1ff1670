/** The coat as CSV tables. */
import { csvFormatRows } from 'd3-dsv';
import type { Coat } from '../../engine/index.ts';

const number = (value: number | undefined, digits = 9): string =>
  value === undefined || Number.isNaN(value) ? '' : String(Number(value.toPrecision(digits)));
const degrees = (angle: number | undefined): string =>
  number(angle === undefined ? undefined : (angle * 180) / Math.PI, 6);

/** x_m, y_m, z_m, thickness_nm, mean_incidence_deg for every point of the map. */
export function thicknessTable({ face, thickness, arrival }: Coat): string {
  const p = face.points.position;
  const rows = Array.from(thickness, (value, i) => [
    number(p[3 * i]),
    number(p[3 * i + 1]),
    number(p[3 * i + 2]),
    number(value * 1e9),
    degrees(arrival?.meanAngle[i]),
  ]);
  return `${csvFormatRows([['x_m', 'y_m', 'z_m', 'thickness_nm', 'mean_incidence_deg'], ...rows])}\n`;
}

/** radius_m, mean_nm, min_nm, max_nm over azimuth. */
export function profileTable({ profile }: Coat): string {
  const rows = Array.from(profile.radius, (r, i) => [
    number(r),
    ...[profile.mean, profile.minimum, profile.maximum].map((values) => number(values[i]! * 1e9)),
  ]);
  return `${csvFormatRows([['radius_m', 'mean_nm', 'min_nm', 'max_nm'], ...rows])}\n`;
}

/** name, x_m, y_m, z_m, thickness_nm, mean_incidence_deg for every witness. */
export function witnessTable({ plant, witnessThickness, arrival }: Coat): string {
  const rows = plant.witnesses.map(({ name, position }, i) => [
    name,
    ...position.map((x) => number(x)),
    number(witnessThickness[i]! * 1e9),
    degrees(arrival?.witnessAngle[i]),
  ]);
  return `${csvFormatRows([['name', 'x_m', 'y_m', 'z_m', 'thickness_nm', 'mean_incidence_deg'], ...rows])}\n`;
}
