/** The built page in a real, headless browser with software rendering. */
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type ConsoleMessage, type Page } from 'playwright';
import { preview, type PreviewServer } from 'vite';
import { CHROMIUM_ARGS, findChromium } from './chromium.ts';

const CONFIG = fileURLToPath(new URL('../../viewer/vite.config.ts', import.meta.url));
/** Where screenshots go, for looking at. */
export const SCREENSHOTS = fileURLToPath(new URL('../../.cache/screenshots/', import.meta.url));

/** Console lines that say nothing about the page: the software renderer's remarks on screenshots, and a library's on itself. */
const HARMLESS = [/GPU stall due to ReadPixels/, /THREE\.Clock.*deprecated/];

export interface OpenPage {
  readonly page: Page;
  /** console errors, warnings and uncaught exceptions so far */
  readonly complaints: string[];
  /** addresses asked for, other than the page's own server */
  readonly foreignRequests: string[];
}

export interface Site {
  readonly browser: Browser;
  readonly address: string;
  /** Opens a page of its own in a fresh context. */
  readonly open: (options?: OpenOptions) => Promise<OpenPage>;
  readonly close: () => Promise<void>;
}

export interface OpenOptions {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  /** what follows the address: a query or a fragment */
  readonly suffix?: string;
  /** takes the system's file dialogs away, so that the page falls back to upload and download, which can be driven */
  readonly withoutFileDialogs?: boolean;
}

/** Serves the built page and starts a browser. */
export async function openSite(): Promise<Site> {
  const server: PreviewServer = await preview({
    configFile: CONFIG,
    preview: { port: 0, host: '127.0.0.1', open: false },
    logLevel: 'error',
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('the preview server has no address');
  const browser = await chromium.launch({ executablePath: await findChromium(), args: CHROMIUM_ARGS });
  return {
    browser,
    address,
    open: async (options) => openPage(browser, address, options),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

async function openPage(
  browser: Browser,
  address: string,
  { width = 1440, height = 900, theme = 'light', suffix = '', withoutFileDialogs = false }: OpenOptions = {},
): Promise<OpenPage> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  if (withoutFileDialogs) {
    await page.addInitScript(() => {
      Reflect.deleteProperty(window, 'showOpenFilePicker');
      Reflect.deleteProperty(window, 'showSaveFilePicker');
    });
  }
  const complaints: string[] = [];
  const foreignRequests: string[] = [];
  page.on('console', (message: ConsoleMessage) => {
    const isLoud = message.type() === 'error' || message.type() === 'warning';
    if (isLoud && !HARMLESS.some((pattern) => pattern.test(message.text()))) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !url.startsWith('data:') && !url.startsWith('blob:')) foreignRequests.push(url);
  });
  await page.goto(address + suffix);
  return { page, complaints, foreignRequests };
}
