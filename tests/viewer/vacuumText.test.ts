import { describe, expect, test } from 'vitest';
import { mixtureRows, mixtureText } from '../../viewer/stages/vacuum/gas/mixtureText.ts';
import { gaugeReadings } from '../../viewer/stages/vacuum/gaugeReadings.ts';
import { durationText, pathText, pressureText, shareText, vacuumWords } from '../../viewer/stages/vacuum/vacuumText.ts';

const METRIC = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };
const OTHER = { length: 'in', thickness: 'Å', mass: 'oz', pressure: 'Torr', temperature: 'degF' };

describe('quantities of vacuum', () => {
  test('stand in the user’s units', () => {
    expect(pressureText(METRIC, 1e-3)).toBe('10⁻⁵ mbar');
    expect(pressureText(OTHER, 1e-3)).toBe('7.5·10⁻⁶ Torr');
    expect(pathText(METRIC, 6.61)).toBe('6.61 m');
    expect(pathText(OTHER, 2.54)).toBe('100 in');
    const words = vacuumWords(METRIC);
    expect(words.flow(1e-4)).toBe('0.001 mbar l/s');
    expect(words.speed(6.4)).toBe('6400 l/s');
  });

  test('a time has a unit that suits it', () => {
    expect(durationText(3.5e-4)).toBe('3.5·10⁻⁴ s');
    expect(durationText(41)).toBe('41 s');
    expect(durationText(3 * 3600 + 20 * 60)).toBe('3 h 20 min');
  });

  test('a share near all is never written as all, a small one never as none', () => {
    expect(shareText(0.87)).toBe('87 %');
    expect(shareText(0.9995)).toBe('99.95 %');
    expect(shareText(0.99999)).toBe('99.999 %');
    expect(shareText(1 - 1e-9)).toBe('over 99.999 %');
    expect(shareText(1)).toBe('100 %');
    expect(shareText(4e-7)).toBe('4·10⁻⁵ %');
  });
});

describe('a mixture in one line', () => {
  const AIR = [
    { gas: 'N2', share: '78 %' },
    { gas: 'O2', share: '21 %' },
    { gas: 'Ar', share: '1 %' },
  ];

  test('is read as it is written, share first or gas first, and comes back the same', () => {
    expect(mixtureRows('78 % N2, 21 % O2, 1 % Ar')).toEqual(AIR);
    expect(mixtureRows('N2 78 %; O2: 21 % + Ar 1 %')).toEqual(AIR);
    expect(mixtureRows(mixtureText(AIR))).toEqual(AIR);
  });

  test('keeps a decimal comma together', () => {
    expect(mixtureRows('99,5 % N2, 0,5 % O2')).toEqual([
      { gas: 'N2', share: '99,5 %' },
      { gas: 'O2', share: '0,5 %' },
    ]);
  });

  test('an empty line is no mixture; rubbish is left for the engine to refuse', () => {
    expect(mixtureRows('  ')).toBeUndefined();
    expect(mixtureRows('rubbish')).toEqual([{ gas: 'rubbish', share: '' }]);
  });
});

describe('pasted gauge readings', () => {
  test('become seconds and pascals', () => {
    const { readings, orderFaults } = gaugeReadings('time,pressure\nmin,mbar\n1,1000\n10,32\n');
    expect(orderFaults).toEqual([]);
    expect(readings).toEqual([
      { time: 60, pressure: 100_000 },
      { time: 600, pressure: 3200 },
    ]);
  });

  test('times that do not rise are told with the row as pasted, and nothing is drawn', () => {
    const { readings, orderFaults } = gaugeReadings('time,pressure\nmin,mbar\n1,100\n5,10\n3,1\n');
    expect(readings).toEqual([]);
    expect(orderFaults).toHaveLength(1);
    expect(orderFaults[0]).toMatchObject({ row: 5, column: 'time' });
    expect(orderFaults[0]!.message).toMatch(/expected a time after/);
  });

  test('a pressure above the atmosphere, or of zero, is told', () => {
    expect(gaugeReadings('time,pressure\ns,mbar\n1,5000\n').orderFaults[0]?.message).toMatch(/at most atmospheric/);
    expect(gaugeReadings('time,pressure\ns,mbar\n1,0\n').orderFaults[0]?.message).toMatch(/above zero/);
  });

  test('rubbish gives no readings and no second complaint beside those of its cells', () => {
    expect(gaugeReadings('what a\nlovely day')).toEqual({ readings: [], orderFaults: [] });
    expect(gaugeReadings('')).toEqual({ readings: [], orderFaults: [] });
  });
});
