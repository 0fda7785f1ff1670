import { existsSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BrowserContext, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { openPlant } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { packFragment, unpackFragment } from '../../viewer/state/keep/designLink.ts';
import { openSite, SCREENSHOTS, type OpenPage, type Site } from '../support/page.ts';
import { readVerdict } from '../support/verdict.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => site.close());

const opened: BrowserContext[] = [];
afterEach(async () => {
  await Promise.all(opened.splice(0).map(async (context) => context.close()));
});

async function open(options?: Parameters<Site['open']>[0]): Promise<OpenPage> {
  const result = await site.open(options);
  opened.push(result.page.context());
  await isDrawn(result.page);
  return result;
}

/** A second tab of the same browser. */
async function openBeside(page: Page, suffix = ''): Promise<Page> {
  const other = await page.context().newPage();
  await other.goto(site.address + suffix);
  await isDrawn(other);
  return other;
}

/** Waits for the verdict, then selects the outer ring so that the form shows its fields. */
async function isDrawn(page: Page): Promise<void> {
  await readVerdict(page);
  await page
    .getByRole('treeitem', { name: /^outer/ })
    .first()
    .click();
}

const height = (page: Page) => page.getByRole('region', { name: /^outer/ }).getByLabel('Height', { exact: true });
const history = (page: Page) => page.getByRole('region', { name: 'History' });
const tabBar = (page: Page) => page.getByRole('region', { name: 'Open in another tab' });
const press = async (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

/** Waits until a field shows a value. */
async function shows(page: Page, value: string): Promise<void> {
  await expect.poll(async () => height(page).inputValue(), { timeout: 10_000 }).toBe(value);
}

/** Sets the height of the outer ring, and waits until it is in the database. */
async function setHeight(page: Page, value: string): Promise<void> {
  await height(page).fill(value);
  await height(page).press('Enter');
  await shows(page, value);
  await history(page)
    .locator('[aria-current]')
    .filter({ hasText: new RegExp(`height.* ${value}`, 'i') })
    .waitFor();
}

/** Opens the edited first preset from the menu of recent designs. */
async function openRecent(page: Page): Promise<void> {
  await press(page, 'Recent');
  await page.getByRole('list', { name: 'Recent designs' }).getByRole('button', { name: presets[0]!.file.name }).click();
}

async function openFile(page: Page, path: string, name: string): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open')]);
  await chooser.setFiles({ name, mimeType: 'application/json', buffer: readFileSync(path) });
}

describe('nothing is lost', () => {
  test('an edit is there again after the page was loaded again', async () => {
    const { page, complaints, foreignRequests } = await open();
    expect(await page.title()).toBe(`${presets[0]!.file.name} – Evenfall`);
    await setHeight(page, '0.95 m');
    await expect.poll(async () => page.title()).toMatch(/^• /);
    await page.reload();
    await isDrawn(page);
    await shows(page, '0.95 m');
    expect(await page.title()).toMatch(/^• /);
    expect(await history(page).getByRole('button').count()).toBe(2);
    expect(complaints).toEqual([]);
    expect(foreignRequests).toEqual([]);
  });

  test('a new session offers what the last one left, and takes no for an answer', async () => {
    const { page } = await open();
    await setHeight(page, '0.95 m');
    await page.close();
    const context = opened[0]!;
    const next = await context.newPage();
    await next.goto(site.address);
    const bar = next.getByRole('region', { name: 'Recovery' });
    await bar.waitFor();
    expect(await bar.textContent()).toMatch(/Restore “.+” from \d\d:\d\d\?/);
    await next.screenshot({ path: join(SCREENSHOTS, 'keep-recovery.png') });
    await bar.getByRole('button', { name: 'Restore' }).click();
    await isDrawn(next);
    await shows(next, '0.95 m');
    expect(await bar.count()).toBe(0);
    await next.getByRole('button', { name: /^Undo: restore/ }).click();
    await shows(next, presetHeight);
    await next.close();
    const third = await context.newPage();
    await third.goto(site.address);
    await press(third, 'Not now');
    await third.waitForTimeout(300);
    await third.close();
    const fourth = await context.newPage();
    await fourth.goto(site.address);
    await isDrawn(fourth);
    await fourth.waitForTimeout(1000); // the offer would be there by now
    expect(await fourth.getByRole('region', { name: 'Recovery' }).count()).toBe(0);
    await openRecent(fourth);
    await shows(fourth, '0.95 m');
  });

  test('the history brings any state back, as a step that can be undone', async () => {
    const { page } = await open();
    await setHeight(page, '0.95 m');
    await page.waitForTimeout(1100); // edits of the same field within a second are one step
    await setHeight(page, '1 m');
    const rows = history(page).getByRole('button');
    await expect.poll(async () => rows.count()).toBe(3);
    await page.screenshot({ path: join(SCREENSHOTS, 'keep-history.png') });
    await rows.nth(1).click();
    await shows(page, '0.95 m');
    await expect.poll(async () => rows.nth(1).getAttribute('aria-current')).toBe('true');
    await page.getByRole('button', { name: /^Undo: restore/ }).click();
    await shows(page, '1 m');
  });

  test('a browser without a database says so once, quietly, and all else works', async () => {
    const context = await site.browser.newContext();
    opened.push(context);
    await context.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));
    const page = await context.newPage();
    await page.goto(site.address);
    await isDrawn(page);
    const bar = page.getByRole('region', { name: 'Nothing is kept' });
    await bar.waitFor();
    await height(page).fill('0.95 m');
    await height(page).press('Enter');
    await shows(page, '0.95 m');
    await bar.getByRole('button', { name: 'Close' }).click();
    await page.waitForTimeout(1200); // writing was tried again by now
    expect(await bar.count()).toBe(0);
    const asked = page.waitForEvent('dialog');
    void page.reload().catch(() => undefined);
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.accept();
  });

  test('saving takes the dot from the title, and an edit puts it back', async () => {
    const { page } = await open({ withoutFileDialogs: true });
    await setHeight(page, '0.95 m');
    await expect.poll(async () => page.title()).toMatch(/^• /);
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    expect(readFileSync(await download.path(), 'utf8')).toContain('"0.95 m"');
    await expect.poll(async () => page.title()).not.toMatch(/^• /);
    await setHeight(page, '1 m');
    await expect.poll(async () => page.title()).toMatch(/^• /);
  });

  test('a saved file that is opened again is the same design, with its history', async () => {
    const { page } = await open({ withoutFileDialogs: true });
    await setHeight(page, '0.95 m');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    await page.waitForTimeout(1100); // edits of the same field within a second are one step
    await setHeight(page, '1 m');
    await openFile(page, await download.path(), 'plant.json');
    await shows(page, '0.95 m');
    const rows = history(page).getByRole('button');
    await expect.poll(async () => rows.count()).toBe(3);
    await expect.poll(async () => rows.nth(1).getAttribute('aria-current')).toBe('true');
    await expect.poll(async () => page.title()).not.toMatch(/^• /);
    // and in another tab it is known to be open here
    const other = await page.context().newPage();
    await other.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'));
    await other.goto(site.address);
    await isDrawn(other);
    await openFile(other, await download.path(), 'plant.json');
    await tabBar(other).waitFor();
  });

  test('the second saving writes the same file without asking, and asks again if somebody else wrote it', async () => {
    const context = await site.browser.newContext();
    opened.push(context);
    // a file of the browser's own private file system stands for one on the disk
    await context.addInitScript(() => {
      Object.assign(window, { asked: 0 });
      Object.assign(window, {
        showSaveFilePicker: async () => {
          (window as unknown as { asked: number }).asked++;
          return (await navigator.storage.getDirectory()).getFileHandle('plant.json', { create: true });
        },
      });
    });
    const page = await context.newPage();
    await page.goto(site.address);
    await isDrawn(page);
    const asked = async () => page.evaluate(() => (window as unknown as { asked: number }).asked);
    const content = async () =>
      page.evaluate(async () => {
        const handle = await (await navigator.storage.getDirectory()).getFileHandle('plant.json');
        return (await handle.getFile()).text();
      });
    const saved = async (text: string) => expect.poll(async () => (await content()).includes(text)).toBe(true);
    await setHeight(page, '0.95 m');
    await press(page, 'Save');
    await saved('0.95 m');
    await expect.poll(async () => page.title()).not.toMatch(/^• /);
    await setHeight(page, '1 m');
    await page.keyboard.press('Control+s');
    await saved('1 m');
    await expect.poll(async () => page.title()).not.toMatch(/^• /);
    expect(await asked()).toBe(1);
    await press(page, 'Save as');
    await expect.poll(asked).toBe(2);
    await expect.poll(async () => page.title()).not.toMatch(/^• /);
    await page.evaluate(async () => {
      await new Promise((resolve) => setTimeout(resolve, 50)); // another time of writing
      const handle = await (await navigator.storage.getDirectory()).getFileHandle('plant.json');
      const stream = await handle.createWritable();
      await stream.write('written by another program');
      await stream.close();
    });
    await setHeight(page, '1.05 m');
    await press(page, 'Save');
    await expect.poll(asked).toBe(3);
  });
});

const outer = presets[0]!.file.filaments.find(({ name }) => name === 'outer');
const presetHeight = outer?.arrangement === 'ring' ? outer.height : '';

describe('a link', () => {
  test('carries the whole design to another browser', async () => {
    const { page } = await open();
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await setHeight(page, '0.95 m');
    await press(page, 'Copy link');
    const group = page.getByRole('group', { name: 'Link to the design' });
    await group.getByText('Link copied.').waitFor();
    expect(await group.textContent()).toMatch(/[\d,]+ characters, with the whole design/);
    await page.screenshot({ path: join(SCREENSHOTS, 'keep-link.png') });
    const link = await page.evaluate(async () => navigator.clipboard.readText());
    const carried = unpackFragment(new URL(link).hash);
    const plant = openPlant(carried.ok ? carried.text : '');
    expect(plant.ok && plant.file.name).toBe(presets[0]!.file.name);
    const { page: other, complaints, foreignRequests } = await open({ suffix: new URL(link).hash });
    await shows(other, '0.95 m');
    expect(new URL(other.url()).hash).toBe('');
    expect(complaints).toEqual([]);
    expect(foreignRequests).toEqual([]);
  });

  test('lies selected in a field where the browser does not let the page copy', async () => {
    const { page } = await open();
    await press(page, 'Copy link');
    const field = page.getByLabel('The link', { exact: true });
    await expect.poll(async () => field.evaluate((input) => input === document.activeElement)).toBe(true);
    const selected = await field.evaluate((input: HTMLInputElement) =>
      input.value.slice(input.selectionStart ?? 0, input.selectionEnd ?? 0),
    );
    const carried = unpackFragment(new URL(selected).hash);
    expect(carried.ok && JSON.parse(carried.text)).toEqual(presets[0]!.file);
  });

  test('that is cut short is refused, and the preset stays', async () => {
    const fragment = packFragment(JSON.stringify(presets[1]!.file));
    const { page } = await open({ suffix: fragment.slice(0, -40) });
    await page.getByRole('alert').filter({ hasText: 'cut short or damaged' }).waitFor();
    await shows(page, presetHeight);
    await page.evaluate((hash) => {
      window.location.hash = hash;
    }, fragment);
    await expect.poll(async () => page.title()).toContain(presets[1]!.file.name);
    expect(await page.getByRole('alert').count()).toBe(0);
  });
});

describe('two tabs', () => {
  test('do not overwrite each other: the second looks, copies, or takes over', async () => {
    const { page: first } = await open();
    await setHeight(first, '0.95 m');
    const second = await openBeside(first);
    await openRecent(second);
    await tabBar(second).waitFor();
    await second.screenshot({ path: join(SCREENSHOTS, 'keep-two-tabs.png') });
    await height(second).fill('1.1 m');
    await height(second).press('Enter');
    await second.getByText(/another tab has this design open/).waitFor();
    await height(second).press('Escape');
    // an edit in the first tab goes with the design when the second takes it over
    await first.waitForTimeout(1100);
    await setHeight(first, '1 m');
    await press(second, 'Take over here');
    await shows(second, '1 m');
    await tabBar(second).waitFor({ state: 'detached' });
    await tabBar(first).getByText('Another tab has taken this design over.').waitFor();
    await setHeight(second, '1.05 m');
    // and back again
    await press(first, 'Take over here');
    await shows(first, '1.05 m');
    await tabBar(second).waitFor();
    // the second goes on with a copy; both can be edited
    await press(second, 'Work on a copy');
    await tabBar(second).waitFor({ state: 'detached' });
    await expect.poll(async () => second.title()).toContain('(copy)');
    await setHeight(second, '0.9 m');
    await setHeight(first, '1.02 m');
    await shows(second, '0.9 m');
    expect(await tabBar(first).count()).toBe(0);
  });

  test('that one of them leaves are one: the other may write after a moment', async () => {
    const { page: first } = await open();
    await setHeight(first, '0.95 m');
    const second = await openBeside(first);
    await openRecent(second);
    await tabBar(second).waitFor();
    await first.close({ runBeforeUnload: true });
    await tabBar(second).waitFor({ state: 'detached' });
    await setHeight(second, '1 m');
  });
});

const DIST = fileURLToPath(new URL('../../dist/', import.meta.url));
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

/** A plain server of files, with the page in a folder deep inside. */
async function serveInFolder(change: (name: string, content: Buffer) => Buffer): Promise<[Server, string]> {
  const folder = '/some/folder/';
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const name = pathname === folder ? 'index.html' : pathname.slice(folder.length);
    const path = join(DIST, name);
    if (!pathname.startsWith(folder) || !path.startsWith(DIST) || !existsSync(path)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'Content-Type': TYPES[extname(path)] ?? 'application/octet-stream' });
    response.end(change(name, readFileSync(path)));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return [server, `http://127.0.0.1:${(server.address() as AddressInfo).port}${folder}`];
}

/** Waits until the page's files lie in the browser's cache. */
const isInstalled = async (page: Page): Promise<void> => {
  await page.evaluate(async () => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
};

describe('without a network', () => {
  test('the page opens from its cache, in any folder, and computes', async () => {
    const [server, address] = await serveInFolder((_name, content) => content);
    const context = await site.browser.newContext();
    opened.push(context);
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('pageerror', ({ message }) => complaints.push(message));
    await page.goto(address);
    await isDrawn(page);
    await isInstalled(page);
    await context.setOffline(true);
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
    await page.reload();
    await isDrawn(page);
    // rays are loaded late: a design with a shadow needs them
    const shadowed = presets.find(({ file }) => (file.obstacles ?? []).length > 0)!.file;
    await page.getByLabel('Preset').selectOption({ label: shadowed.name });
    await expect.poll(async () => page.title()).toContain(shadowed.name);
    await isDrawn(page);
    await page.goto(`${address}index.html`);
    await isDrawn(page);
    expect(complaints).toEqual([]);
  });

  test('a new version waits, is announced, and is there after reloading, with the design', async () => {
    let version = 'old';
    const [server, address] = await serveInFolder((name, content) =>
      name === 'sw.js'
        ? Buffer.from(content.toString('utf8').replace(/"version":"\w+"/, `"version":"${version}"`))
        : name === 'index.html'
          ? Buffer.from(content.toString('utf8').replace('<html ', `<html data-version="${version}" `))
          : content,
    );
    const context = await site.browser.newContext();
    opened.push(context);
    const page = await context.newPage();
    await page.goto(address);
    await isDrawn(page);
    await isInstalled(page);
    await setHeight(page, '0.95 m');
    version = 'new';
    await page.reload();
    await isDrawn(page);
    const shown = async () => page.evaluate(() => document.documentElement.dataset['version']);
    expect(await shown()).toBe('old');
    const bar = page.getByRole('region', { name: 'New version' });
    await bar.waitFor();
    await bar.getByRole('button', { name: 'Reload' }).click();
    await expect.poll(shown, { timeout: 10_000 }).toBe('new');
    await isDrawn(page);
    await shows(page, '0.95 m');
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
  });
});
