/** Through the Vacuum stage as its users walk. */
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSite, SCREENSHOTS, type Site } from '../support/page.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => site.close());

const SUFFIX = '?stage=vacuum';

/** Waits until the sentence over the stage says something, and answers it; numbers hang together with their units. */
async function sentence(page: Page, words: RegExp): Promise<string> {
  const unbroken = new RegExp(words.source.replaceAll(' ', '\\s'));
  const verdict = page.getByRole('status', { name: 'Verdict' }).filter({ hasText: unbroken });
  await verdict.waitFor();
  return (await verdict.innerText()).replaceAll('\u00a0', ' ');
}

const room = async (page: Page, name: string): Promise<void> => page.getByRole('tab', { name, exact: true }).click();

async function setField(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

test('a technician makes the vacuum worse and reads what it does; bad input changes nothing', async () => {
  const { page, complaints, foreignRequests } = await site.open({ suffix: SUFFIX });
  await sentence(page, /10⁻⁵ mbar/);
  await setField(page, 'Pressure', '1e-4 mbar');
  await sentence(page, /Not good enough to fire: at 10⁻⁴ mbar/);
  await setField(page, 'Pressure', '5 bar');
  await page.getByText(/expected a pressure above zero and at most atmospheric/).waitFor();
  await sentence(page, /at 10⁻⁴ mbar/);
  await setField(page, 'Mixture instead of one gas', '50 % N2, 40 % H2O');
  await page.getByText(/expected shares that add up to 100 %; found 90 %/).waitFor();
  await setField(page, 'Mixture instead of one gas', '50 % N2, 50 % H2O');
  await room(page, 'Gas');
  await page.getByRole('row', { name: /water vapour/ }).waitFor();
  for (let i = 0; i < 2; i++) await page.getByRole('button', { name: /^Undo/ }).click();
  await sentence(page, /at 10⁻⁵ mbar/);
  expect(complaints).toEqual([]);
  expect(foreignRequests).toEqual([]);
});

test('readings lie over the pump-down; what is wrong with them is told and nothing is lost', async () => {
  const { page, complaints } = await site.open({ suffix: SUFFIX });
  await sentence(page, /10⁻⁵ mbar/);
  await room(page, 'Pump-down');
  const box = page.getByRole('textbox', { name: 'Readings of a pump-down' });
  await box.fill('time,pressure\nmin,mbar\n1,900\n5,200\n3,400');
  await page.getByText(/Row 5, column time: expected a time after the 300 s/).waitFor();
  await page.getByRole('img', { name: /^Pressure against time/ }).waitFor();
  await box.fill('rubbish');
  await page.getByText(/fault/).first().waitFor();
  await box.fill('time,pressure\nmin,mbar\n1,900\n5,200\n8,90');
  await page.getByRole('img', { name: /3 readings lie over it/ }).waitFor();
  await page.reload();
  // the room and the readings are still there
  await page.getByRole('img', { name: /3 readings lie over it/ }).waitFor();
  expect(await box.inputValue()).toContain('8,90');
  await setField(page, 'Leak', '100 mbar l/s');
  await sentence(page, /The pumps never reach/);
  await page.getByRole('row', { name: /^Firing pressure.*never/ }).waitFor();
  expect(complaints).toEqual([]);
});

test('a pump without speed is refused in words', async () => {
  const { page, complaints } = await site.open({ suffix: SUFFIX });
  await sentence(page, /10⁻⁵ mbar/);
  await room(page, 'Pump-down');
  await setField(page, 'Pumps 1: Rated speed', '0 l/s');
  await page.getByText(/expected a volume flow greater than zero; found "0 l\/s"/).waitFor();
  await sentence(page, /Ready/);
  expect(complaints).toEqual([]);
});

test('atoms are followed, cancelled, and followed to the wanted error; their seed is named', async () => {
  const { page, complaints } = await site.open({ suffix: SUFFIX });
  await sentence(page, /flies straight/);
  await room(page, 'Scattering');
  await setField(page, 'Stop at this error', '0.1 %');
  await setField(page, 'Atoms at most', '100000000');
  await page.getByRole('button', { name: 'Follow atoms' }).click();
  await page.getByRole('progressbar', { name: 'Following atoms' }).waitFor();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByText('Cancelled. What was worked out before is still shown.').waitFor();
  await setField(page, 'Stop at this error', '10 %');
  await setField(page, 'Seed', '7');
  await page.getByRole('button', { name: 'Follow atoms' }).click();
  const table = page.getByRole('region', { name: 'Coat through gas' });
  await table.getByText(/seed 7\..*as wanted/).waitFor();
  const ends = page.getByRole('region', { name: 'Where the vapour ends' });
  await ends.getByRole('row', { name: /^Mirror, scattered/ }).waitFor();
  await page.getByRole('img', { name: /Thickness in a perfect vacuum/ }).waitFor();
  expect(complaints).toEqual([]);
});

test('a rate of rise tells a leak from outgassing', async () => {
  const { page, complaints } = await site.open({ suffix: SUFFIX });
  await sentence(page, /10⁻⁵ mbar/);
  await room(page, 'Rate of rise');
  await page.getByRole('button', { name: 'Start from an example' }).click();
  await page.getByRole('img', { name: /^Pressure in the closed tank.*leak/ }).waitFor();
  const rows = ['0,1e-5', '1,2e-5', '2,3e-5'].join('\n');
  await page.getByRole('textbox', { name: 'Readings with all valves closed' }).fill(`time,pressure\nmin,mbar\n${rows}`);
  await page
    .getByText(/expected at least 6 readings/)
    .first()
    .waitFor();
  expect(complaints).toEqual([]);
});

/** All rooms in one theme; in the other those that have every kind of sign. */
const ROOMS = {
  light: ['Go or no-go', 'Gas', 'Scattering', 'In the film', 'Pump-down', 'Rate of rise', 'Glow'],
  dark: ['Go or no-go', 'Pump-down', 'Glow'],
} as const;

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  test('no room has a serious finding', async () => {
    const { page, complaints } = await site.open({ theme, suffix: SUFFIX });
    await sentence(page, /10⁻⁵ mbar/);
    for (const name of ROOMS[theme]) {
      await room(page, name);
      await page.getByRole('tab', { name, exact: true, selected: true }).waitFor();
      const { violations } = await new AxeBuilder({ page }).include('[data-stage=vacuum]').analyze();
      const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      expect(
        serious.map(({ id, nodes }) => `${name}: ${id}: ${nodes.map(({ target }) => target.join(' ')).join()}`),
      ).toEqual([]);
    }
    await page.screenshot({ path: join(SCREENSHOTS, `vacuum-${theme}.png`) });
    expect(complaints).toEqual([]);
  });
});
