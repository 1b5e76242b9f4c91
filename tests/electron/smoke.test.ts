import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, type ElectronApplication, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensurePages } from '../../src/host/build-pages.ts';
import { findElectron } from '../../src/host/electron-binary.ts';
import { PROGRAM } from '../../src/host/home.ts';

const program = findElectron(join(PROGRAM, 'node_modules/electron'));
const missing = program === undefined;
if (missing) {
  console.log(
    'Not run: Electron’s program is not here (npx install-electron fetches it), so the desktop window itself was not opened.',
  );
}

/** The demo press in the real window: what only Electron's own program can show. */
let app: ElectronApplication;
let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  if (program === undefined) return;
  await ensurePages(() => {});
  execFileSync(process.execPath, [join(PROGRAM, 'electron/build.ts')]);
  const data = mkdtempSync(join(tmpdir(), 'edition-ledger-smoke-'));
  app = await _electron.launch({
    executablePath: program,
    args: [
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      `--user-data-dir=${data}`,
      PROGRAM,
      '--catalogue',
      join(data, 'demo.ledger'),
    ],
  });
  page = await app.firstWindow();
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  await page.getByRole('heading', { level: 1 }).waitFor();
});
afterAll(() => app?.close());

test.skipIf(missing)('the window shows the Catalogue from the program’s own scheme', async () => {
  expect(page.url()).toMatch(/^app:\/\/edition-ledger\//);
  expect(await app.windows()).toHaveLength(1);
});

test.skipIf(missing)('the page has no Node, one door, and no way out', async () => {
  const found = await page.evaluate(async () => {
    const outside = await fetch('https://site.example/').then(
      () => 'reached',
      () => 'refused',
    );
    const made = (() => {
      try {
        return String(new Function('return 1')());
      } catch {
        return 'refused';
      }
    })();
    return {
      node: ['require', 'process', 'module', 'Buffer'].filter((name) => name in globalThis),
      door: Object.keys((window as unknown as { editionLedger: object }).editionLedger).sort(),
      opened: window.open('https://site.example/') === null,
      outside,
      made,
    };
  });
  expect(found).toEqual({
    node: [],
    door: ['call', 'cancel', 'dragOut', 'openDropped', 'subscribe'],
    opened: true,
    outside: 'refused',
    made: 'refused',
  });
});

test.skipIf(missing)(
  'the demo press is filled in, looked at and audited through the real message ports',
  async () => {
    await page.getByRole('button', { name: /demo/i }).first().click();
    await page.getByText('The Salt Almanac').first().waitFor();
    const told = await page.evaluate(async () => {
      const { editionLedger } = window as unknown as {
        editionLedger: {
          call(name: string, input: object): Promise<{ ok: boolean; value: { ok?: boolean } }>;
        };
      };
      const check = await editionLedger.call('catalogue.check', {});
      return { audit: (await editionLedger.call('audit.run', {})).ok, sound: check.value.ok };
    });
    expect(told).toEqual({ audit: true, sound: true });
  },
);

test.skipIf(missing)('the menu leads to a screen, and the page prints to a PDF', async () => {
  await app.evaluate(({ Menu }) => {
    const go = Menu.getApplicationMenu()?.items.find((item) => item.label.includes('Go'));
    go?.submenu?.items.find((item) => item.label === 'Numbers')?.click();
  });
  await page.getByRole('heading', { level: 1, name: 'Numbers' }).waitFor();
  const pdf = await app.evaluate(async ({ BrowserWindow }) => {
    const bytes = await BrowserWindow.getAllWindows()[0]?.webContents.printToPDF({});
    return bytes?.subarray(0, 5).toString();
  });
  expect(pdf).toBe('%PDF-');
});

test.skipIf(missing)('the store’s work does not hold the window up', async () => {
  const longest = await page.evaluate(async () => {
    const { editionLedger } = window as unknown as {
      editionLedger: { call(name: string, input: object): Promise<unknown> };
    };
    let last = performance.now();
    let gap = 0;
    const timer = setInterval(() => {
      gap = Math.max(gap, performance.now() - last);
      last = performance.now();
    }, 10);
    await Promise.all(Array.from({ length: 20 }, () => editionLedger.call('catalogue.check', {})));
    clearInterval(timer);
    return gap;
  });
  expect(longest).toBeLessThan(500);
  expect(complaints.filter((text) => !/site\.example|Content Security Policy/.test(text))).toEqual([]);
});
