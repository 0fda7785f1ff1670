/** Filament tables as text: from the bytes of a file, and from placed filaments. */
import { dsvFormat } from 'd3-dsv';
import { formatQuantity, inUnit, type Filament } from '../../../engine/index.ts';
import { lengthText } from './lengths.ts';

/** Bytes as UTF-8 text; where they are not UTF-8, one character a byte, as the engine reads them. */
export function tableText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  }
}

const HEADING = ['name', 'x', 'y', 'z', 'axis_x', 'axis_y', 'axis_z', 'charge', 'feed'];

/** Filaments as a table that reads back as the same filaments. */
export function filamentTableText(filaments: readonly Filament[], unit: string): string {
  const length = (value: number): string => lengthText(value, unit).split(' ')[0] ?? '';
  const rows = filaments.map(({ name, center, coilAxis, charge, feed }) => [
    name,
    ...center.map(length),
    ...coilAxis.map((v) => String(Number(v.toFixed(15)) || 0)),
    String(Number(inUnit(charge, 'mass', 'mg').toPrecision(15))),
    feed ?? '',
  ]);
  return `${dsvFormat(',').formatRows([HEADING, ['', unit, unit, unit, '', '', '', 'mg', ''], ...rows])}\n`;
}

/** A charge as designs write it. */
export const chargeText = (charge: number): string => formatQuantity(charge, 'mass', 'mg', 15);
