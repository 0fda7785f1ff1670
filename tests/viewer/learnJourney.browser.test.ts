import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSite, SCREENSHOTS, type Site } from '../support/page.ts';
import { textOf } from '../support/verdict.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => site.close());

/** Findings that would shut somebody out. */
async function seriousFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).include('main').analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}

const lessonButton = (page: Page, title: RegExp) =>
  page.getByRole('navigation', { name: /^Lessons/ }).getByRole('button', { name: title });
const box = (page: Page, name: 'Predict' | 'Why' | 'Check') => page.getByRole('region', { name, exact: true });
const done = (page: Page) => page.getByText(/^\d+ of 10 done$/);

async function openLesson(page: Page, title: RegExp): Promise<void> {
  await lessonButton(page, title).click();
  await box(page, 'Predict').waitFor();
}

/** Commits choice number i. */
async function predict(page: Page, i: number): Promise<void> {
  await box(page, 'Predict').getByRole('radio').nth(i).check();
  await page.getByRole('button', { name: 'Commit my prediction' }).click();
  await box(page, 'Why').waitFor();
}

/** Answers the check question with one choice after another until one is right; tells how often it was wrong. */
async function answerUntilRight(page: Page): Promise<number> {
  const check = box(page, 'Check');
  const count = await check.getByRole('radio').count();
  for (let i = 0; i < count; i++) {
    await check.getByRole('radio').nth(i).check();
    await check.getByRole('button', { name: 'Answer' }).click();
    const verdict = await textOf(check.getByRole('status'));
    if (verdict.startsWith('Right.')) return i;
    expect(verdict).toMatch(/^Not quite\. .*\d/);
    await check.getByRole('button', { name: 'Try again' }).click();
  }
  throw new Error('expected a right answer among the choices; found none');
}

describe('a learner', () => {
  test('predicts, sees the answer, checks, goes on, and finds all of it again on the next visit', async () => {
    const { page, complaints } = await site.open({ suffix: '?stage=learn' });
    await openLesson(page, /Why the far side is thin/);
    const slider = page.getByRole('slider', { name: 'Place on the mirror' });
    expect(await slider.isDisabled()).toBe(true);
    expect(await box(page, 'Why').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Commit my prediction' }).isDisabled()).toBe(true);

    await predict(page, 0);
    expect(await textOf(box(page, 'Predict').getByRole('status'))).toMatch(
      /^(As you predicted|It turns out otherwise)\./,
    );
    expect(await textOf(box(page, 'Why'))).toMatch(/Tarn Hill 2\.6 m, as wired.*inverse square/s);
    expect(await slider.isEnabled()).toBe(true);
    const before = await slider.getAttribute('aria-valuetext');
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    expect(await slider.getAttribute('aria-valuetext')).not.toBe(before);
    await answerUntilRight(page);
    expect(await textOf(done(page))).toBe('1 of 10 done');

    await page.getByRole('button', { name: 'Next lesson' }).click();
    await box(page, 'Predict').waitFor();
    expect(await textOf(page.getByRole('status', { name: 'Aim of the lesson' }))).toMatch(/Lesson 5 of 10/);
    await predict(page, 2);
    const arrangement = page.getByRole('region', { name: 'Arrangement' });
    const result = arrangement.getByRole('status');
    const one = await textOf(result);
    await arrangement.getByRole('radio', { name: 'two rings' }).check();
    await expect.poll(async () => textOf(result)).not.toBe(one);
    await answerUntilRight(page);
    expect(await textOf(done(page))).toBe('2 of 10 done');

    await page.reload();
    await box(page, 'Check').waitFor();
    expect(await textOf(done(page))).toBe('2 of 10 done');
    expect(await textOf(page.getByRole('status', { name: 'Aim of the lesson' }))).toMatch(/Lesson 5 of 10/);
    expect(await textOf(box(page, 'Check').getByRole('status'))).toMatch(/^Right\./);

    await page.getByRole('button', { name: 'Predict again' }).click();
    await expect.poll(async () => box(page, 'Why').count()).toBe(0);
    expect(await textOf(done(page))).toBe('2 of 10 done');
    await page.locator('h1').click();
    await page.keyboard.press('[');
    await expect
      .poll(async () => textOf(page.getByRole('status', { name: 'Aim of the lesson' })))
      .toMatch(/Lesson 4 of 10/);
    expect(complaints).toEqual([]);
  });

  test('may take the numbers from the teaching tank, and a prediction made for one tank does not tell the other', async () => {
    const { page, complaints } = await site.open({ suffix: '?stage=learn' });
    await openLesson(page, /The scale of it/);
    await predict(page, 1);
    expect(await textOf(box(page, 'Why'))).toMatch(/Tarn Hill/);
    await page.getByRole('radio', { name: /Larch Street/ }).check();
    await page.getByText(/Your mirror, 0\.150.m across/).waitFor();
    expect(complaints).toEqual([]);
  });

  test('launches atoms, which land whole where motion is not wanted, and steps one from corner to corner', async () => {
    const { page, complaints } = await site.open({ suffix: '?stage=learn' });
    await openLesson(page, /Straight lines/);
    await predict(page, 0);
    const told = page.getByRole('region', { name: 'Atoms in the tank' }).getByRole('status');
    expect(await textOf(told)).toBe('No atom has left yet.');
    await page.getByRole('button', { name: 'Launch an atom' }).click();
    await expect.poll(async () => textOf(told)).toMatch(/^Atom 1: .* stuck to/);
    await page.getByRole('button', { name: 'Launch ten' }).click();
    await expect.poll(async () => textOf(told)).toMatch(/^Atom 11: /);
    const step = page.getByRole('button', { name: 'Step' });
    for (let i = 0; i < 200 && !(await textOf(told)).startsWith('Atom 12: '); i++) await step.click();
    expect(await textOf(told)).toMatch(/^Atom 12: /);
    await page.getByRole('button', { name: 'Clear' }).click();
    expect(await textOf(told)).toBe('No atom has left yet.');
    expect(complaints).toEqual([]);
  });
});

describe('the trainer', () => {
  test('gets a sheet with all aims and answers, worked out for the tank', async () => {
    const { page, complaints } = await site.open({ suffix: '?stage=learn' });
    await page.getByRole('button', { name: 'Trainer’s sheet' }).click();
    const sheet = page.getByRole('document', { name: 'Trainer’s sheet' });
    await sheet.waitFor();
    const text = await sheet.evaluate((host) => host.shadowRoot?.textContent ?? '');
    expect(text.match(/Aim\./g)).toHaveLength(10);
    expect(text.match(/Check\./g)).toHaveLength(10);
    expect(text).not.toMatch(/Cannot be held|NaN|undefined/);
    const right = await sheet.evaluate((host) => host.shadowRoot?.querySelectorAll('li strong').length);
    expect(right).toBe(20);
    await page.evaluate(() => {
      window.print = () => {};
    });
    await page.getByRole('button', { name: 'Print' }).click();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.print-sheet').isVisible()).toBe(true);
    expect(await page.locator('.top-bar').isVisible()).toBe(false);
    await page.screenshot({ path: join(SCREENSHOTS, 'learn-trainer-print.png'), fullPage: true });
    expect(complaints).toEqual([]);
  });
});

test.each(['light', 'dark'] as const)('every lesson is free of serious findings in the %s theme', async (theme) => {
  const { page, complaints } = await site.open({ suffix: '?stage=learn', theme, width: 1280, height: 720 });
  const lessons = page.getByRole('navigation', { name: /^Lessons/ }).getByRole('listitem');
  await lessons.first().waitFor();
  expect(await lessons.count()).toBe(10);
  for (let i = 0; i < 10; i++) {
    await lessons.nth(i).getByRole('button').click();
    await box(page, 'Predict').waitFor();
    await predict(page, 0);
    expect(await seriousFindings(page)).toEqual([]);
    await page.screenshot({ path: join(SCREENSHOTS, `learn-${i + 1}-${theme}-1280x720.png`) });
  }
  expect(complaints).toEqual([]);
});
