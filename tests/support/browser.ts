import { existsSync, mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import { type Browser, chromium, type Page, type Request } from 'playwright-core';
import type { InputOf, OperationName, OutputOf } from '../../src/contract/index.ts';
import { type Launched, type LaunchOptions, launch } from './launch.ts';

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** True where there is no browser and its absence may be excused; in CI it may not. */
export const noBrowser = !existsSync(CHROMIUM) && !process.env.CI;
if (noBrowser) console.log(`Not run: there is no browser at ${CHROMIUM}; set CHROMIUM to its path.`);

/** Pictures of a run, to be looked at; not kept in the repository. */
const PICTURES = fileURLToPath(new URL('../../test-output/', import.meta.url));

export interface Window {
  page: Page;
  browser: Browser;
  launched: Launched;
  /** Errors of the page, which must stay empty. */
  complaints: string[];
  /** Opens a screen by its path, with an optional query: `go('/audit', 'asOf=2020-01-01')`. */
  go(path: string, query?: string): Promise<void>;
  /** Presses the button of this exact name, in the dialog on top if one is open. */
  press(name: string | RegExp): Promise<void>;
  /** Waits until the page has asked for nothing during 150 ms, and everything it asked for was answered. */
  quiet(): Promise<void>;
  /** Reads past the page. */
  call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>;
  /** Takes a picture of the window as it stands. */
  picture(name: string): Promise<void>;
  /** What axe finds against WCAG 2.2 AA, in words, on the page or in one part of it; empty when nothing. */
  faults(within?: string): Promise<string[]>;
  close(): Promise<void>;
}

export interface WindowOptions extends LaunchOptions {
  width?: number;
  height?: number;
  dark?: boolean;
}

/**
 * What axe finds on a page against WCAG 2.2 AA, in words; the message line is put away first, since it may lie over a
 * button. A dialog may lie over the message line in turn, and a message may fade by itself meanwhile.
 */
async function faultsOf(page: Page, within = 'html'): Promise<string[]> {
  await page.evaluate(() =>
    document.querySelector<HTMLButtonElement>('button[title="Dismiss the message"]')?.click(),
  );
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  const { violations } = await new AxeBuilder({ page })
    .include(within)
    .withTags(tags)
    .setLegacyMode()
    .analyze();
  return violations.map(
    (fault) => `${fault.id}: ${fault.nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
  );
}

/** Follows what the page asks of its host; the line on which changes are told stays open and does not count. */
function followCalls(page: Page): () => Promise<void> {
  const open = new Set<Request>();
  let last = 0;
  const note = (request: Request, begun: boolean) => {
    if (request.method() !== 'POST') return;
    last = Date.now();
    if (begun) open.add(request);
    else open.delete(request);
  };
  page.on('request', (request) => note(request, true));
  page.on('requestfinished', (request) => note(request, false));
  page.on('requestfailed', (request) => note(request, false));
  return async () => {
    const until = Date.now() + 40_000;
    while (open.size > 0 || Date.now() - last < 150) {
      if (Date.now() > until) throw new Error('The page goes on asking for 40 seconds.');
      await page.waitForTimeout(30);
    }
  };
}

/** Starts the host on a real file and a real browser on it. */
export async function openWindow(options: WindowOptions = {}): Promise<Window> {
  const { width = 1280, height = 800, dark = false, ...launching } = options;
  const launched = await launch(launching);
  const browser = await chromium.launch({
    executablePath: CHROMIUM,
    args: ['--no-sandbox', '--disable-background-networking'],
  });
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
    locale: 'en-GB',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(40_000);
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  const quiet = followCalls(page);
  await page.goto(launched.startUrl);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return {
    page,
    browser,
    launched,
    complaints,
    quiet,
    call: launched.call,
    go: async (path, query) => {
      await page.goto(`${launched.origin}/${query ? `?${query}` : ''}#${path}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
    },
    press: async (name) => {
      const dialog = page.locator('dialog[open]').last();
      const within = (await dialog.count()) > 0 ? dialog : page.locator('body');
      await within
        .getByRole('button', { name, exact: typeof name === 'string' })
        .first()
        .click();
    },
    picture: async (name) => {
      mkdirSync(PICTURES, { recursive: true });
      await page.screenshot({ path: `${PICTURES}${name}.png` });
    },
    faults: (within) => faultsOf(page, within),
    close: async () => {
      await browser.close();
      await launched.stop();
    },
  };
}
