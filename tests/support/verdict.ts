/** The verdict as a user reads it. */
import type { Locator, Page } from 'playwright';

/** Text with ordinary spaces. */
export async function textOf(locator: Locator): Promise<string> {
  return ((await locator.textContent()) ?? '').replace(/[\u00a0\u202f]/g, ' ');
}

export const verdict = (page: Page): Locator => page.getByRole('status', { name: 'Verdict' });

/** Waits for the first verdict and returns it. */
export async function readVerdict(page: Page): Promise<string> {
  await verdict(page)
    .getByText(/(Thinnest|Thickest|bare)/)
    .first()
    .waitFor();
  return textOf(verdict(page));
}

/** Waits for the verdict to differ from a text, and returns it. */
export async function nextVerdict(page: Page, old: string): Promise<string> {
  await page.waitForFunction((before) => {
    const now = document.querySelector('[role=status][aria-label=Verdict]')?.textContent;
    return now !== undefined && now !== null && now !== '' && now.replace(/[\u00a0\u202f]/g, ' ') !== before;
  }, old);
  return textOf(verdict(page));
}
