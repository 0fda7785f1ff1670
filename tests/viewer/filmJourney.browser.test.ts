/** Through the Film stage as its users walk. */
import { readFile } from 'node:fs/promises';
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

const SUFFIX = '?stage=film';

/** Waits until the sentence says something, and answers it; numbers hang together with their units there. */
async function sentence(page: Page, words: RegExp): Promise<string> {
  const unbroken = new RegExp(words.source.replaceAll(' ', '\\s'));
  const verdict = page.getByRole('status', { name: 'Verdict' }).filter({ hasText: unbroken });
  await verdict.waitFor();
  return (await verdict.innerText()).replaceAll('\u00a0', ' ');
}

test('a lead changes wavelength and overcoat and reads what the mirror reflects', async () => {
  const { page, complaints, foreignRequests } = await site.open({ suffix: SUFFIX });
  await sentence(page, /reflects 91\.4 % \(550 nm\)/);
  const form = page.getByRole('region', { name: 'Film', exact: true });
  await form.getByLabel('Wavelength', { exact: true }).fill('800 nm');
  await form.getByLabel('Wavelength', { exact: true }).press('Enter');
  // bulk aluminium under 3 nm of oxide at 800 nm: 86.7 % (Rakić 1995, physics of the film's own tests)
  await sentence(page, /reflects 86\.7 % \(800 nm\)/);
  await form.getByRole('checkbox', { name: 'Overcoat' }).check();
  const covered = await sentence(page, /\(800 nm\)/);
  await expect.poll(async () => sentence(page, /\(800 nm\)/)).not.toMatch(/86\.7 %/);
  expect(covered).toContain('perfect fresh coat');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await sentence(page, /reflects 91\.4 % \(550 nm\)/);
  expect(complaints).toEqual([]);
  expect(foreignRequests).toEqual([]);
});

test('light that no table knows is refused in words, and the way back is at hand', async () => {
  const { page, complaints } = await site.open({ suffix: SUFFIX });
  await sentence(page, /550 nm/);
  const form = page.getByRole('region', { name: 'Film', exact: true });
  await form.getByLabel('Substrate').selectOption('glass ceramic');
  await page.getByRole('combobox', { name: 'Light' }).selectOption({ label: 'U band, 366 nm' });
  await page.getByRole('alert').filter({ hasText: 'as far as the index of glass ceramic is known' }).waitFor();
  expect(await sentence(page, /cannot be worked out/)).toContain('glass ceramic');
  await page.getByRole('combobox', { name: 'Light' }).selectOption({ label: 'V band, 545 nm' });
  await sentence(page, /V band/);
  expect(complaints).toEqual([]);
});

test('angles of arrival are worked out when quality is looked at', async () => {
  const { page, complaints } = await site.open({ suffix: SUFFIX });
  await sentence(page, /550 nm/);
  await page.getByRole('tab', { name: 'Quality' }).click();
  await page.getByRole('row', { name: /^Steepest mean angle/ }).waitFor();
  await page.getByRole('img', { name: /Mean incidence angle from/ }).waitFor();
  expect(complaints).toEqual([]);
});

test('a manager gets one page that explains the coat, to keep', async () => {
  const { page, complaints } = await site.open({ suffix: SUFFIX, withoutFileDialogs: true });
  await sentence(page, /550 nm/);
  await page.getByRole('button', { name: 'Explain on one page' }).click();
  const sheet = page.getByRole('document', { name: 'Why is the middle thin?' });
  await sheet.getByRole('heading', { name: 'Why is the middle thin?' }).waitFor();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a page' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toBe('tarn-hill-2-6-m-as-wired-explained.html');
  const html = await readFile(await saved.path(), 'utf8');
  expect(html).toMatch(/^<!doctype html>/);
  expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
  await page.screenshot({ path: join(SCREENSHOTS, 'film-explanation.png') });
  expect(complaints).toEqual([]);
});

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  test('no picture of the film shuts anybody out', async () => {
    const { page } = await site.open({ suffix: SUFFIX, theme, width: 1280, height: 720 });
    await sentence(page, /550 nm/);
    for (const name of ['Reflectance', 'Figure', 'Quality']) {
      await page.getByRole('tab', { name, exact: true }).click();
      await page.getByRole('img', { name: /^Map of/ }).waitFor();
      const { violations } = await new AxeBuilder({ page }).analyze();
      const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      expect(
        serious.map(({ id, nodes }) => `${name}: ${id} ${nodes.map(({ target }) => target.join(' ')).join()}`),
      ).toEqual([]);
      await page.screenshot({ path: join(SCREENSHOTS, `film-${name.toLowerCase()}-${theme}.png`) });
    }
  });
});
