import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { openApp } from '../../src/app.ts';
import { ensurePages } from '../../src/host/build-pages.ts';
import { grownCopy, LAST_DAY } from '../support/generator/index.ts';
import { type HostProcess, residentMb, startHostProcess } from '../support/host-process.ts';

// The screens on a small and on a large catalogue, in Chromium, with the host in a process of its own: the wait from
// what is typed to the first thing found, opening a work of 40 formats, and what page and store hold after minutes
// of use. `BENCH_MINUTES` sets how many, ten by itself. Frames while scrolling are measured by the bench `scroll`.

const SIZES = [100, 100_000] as const;
const MINUTES = Number(process.env.BENCH_MINUTES ?? 10);
const TURNS = 9;
interface Place {
  size: number;
  page: Page;
  host: HostProcess;
  origin: string;
  /** A work with 40 formats. */
  workId: number;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}

/** Adds a work with 40 formats; answers its id. */
function addBigWork(file: string): number {
  const app = openApp({ file, today: () => LAST_DAY, now: () => new Date(`${LAST_DAY}T10:00:00.000Z`) });
  const call = <T>(name: string, input: unknown): T => {
    const answer = app.call(name, input);
    if (!answer.ok) throw new Error(answer.error.message);
    return answer.value as T;
  };
  const work = call<{ workId: number; editionId: number }>('works.create', { title: 'Forty Ways Out' });
  for (let i = 0; i < 40; i += 1)
    call('formats.create', { editionId: work.editionId, form: i % 2 ? 'BC' : 'BB' });
  app.close();
  return work.workId;
}

async function place(browser: Browser, folder: string, size: number): Promise<Place> {
  const file = grownCopy({ formats: size }, folder);
  const workId = addBigWork(file);
  const host = await startHostProcess(file);
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.goto(host.url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { size, page, host, origin: new URL(host.url).origin, workId };
}

const go = async ({ page, origin }: Place, path: string, query = '') => {
  await page.goto(`${origin}/${query}#${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
};

/** Scrolls the table of formats for a while. */
async function scroll(at: Place): Promise<void> {
  await go(at, '/catalogue', '?part=formats');
  await at.page.reload();
  const cell = at.page.getByRole('gridcell').nth(3);
  await cell.waitFor();
  await cell.hover();
  for (let turn = 0; turn < 60; turn += 1) {
    await at.page.mouse.wheel(0, 400);
    await at.page.waitForTimeout(30);
  }
}

/** Milliseconds from words entered in the empty search box to the first thing found, in the page's own clock. */
async function typing({ page }: Place): Promise<number> {
  await page.keyboard.press('Control+k');
  await page.locator('.finder').getByRole('combobox').waitFor();
  await page.evaluate(() => {
    const times = window as unknown as { typedAt?: number; foundAt?: number };
    Reflect.deleteProperty(times, 'typedAt');
    Reflect.deleteProperty(times, 'foundAt');
    const seen = new MutationObserver(() => {
      const options = [...document.querySelectorAll('[role=option]')];
      if (!options.some((one) => one.textContent?.includes('Forty Ways Out'))) return;
      times.foundAt = performance.now();
      seen.disconnect();
    });
    const typed = () => {
      times.typedAt = performance.now();
      seen.observe(document.body, { childList: true, subtree: true, characterData: true });
    };
    addEventListener('input', typed, { once: true, capture: true });
  });
  await page.keyboard.insertText('forty ways');
  await page.waitForFunction(() => 'foundAt' in window);
  const wait = await page.evaluate(() => {
    const times = window as unknown as { foundAt: number; typedAt: number };
    return times.foundAt - times.typedAt;
  });
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  return wait;
}

/** Milliseconds until a work with 40 formats stands there with the last of them. */
async function openWork(at: Place): Promise<number> {
  await go(at, '/settings');
  const began = performance.now();
  await at.page.evaluate((id) => location.assign(`#/work/${id}`), at.workId);
  await at.page.getByRole('heading', { level: 1, name: 'Forty Ways Out' }).waitFor();
  await at.page.waitForFunction(() => document.querySelectorAll('.format').length >= 40);
  return performance.now() - began;
}

interface Held {
  minute: number;
  pageMb: number;
  storeMb: number;
}

async function held({ page, host }: Place, minute: number): Promise<Held> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = (await session.send('Runtime.getHeapUsage')) as { usedSize: number };
  await session.detach();
  return { minute, pageMb: usedSize / 2 ** 20, storeMb: residentMb(host.pid) ?? 0 };
}

/** Goes round the screens for some minutes; answers what is held, minute by minute. */
async function use(at: Place): Promise<Held[]> {
  const began = Date.now();
  const rounds: Held[] = [];
  const minutes = () => (Date.now() - began) / 60_000;
  while (minutes() < MINUTES) {
    await scroll(at);
    await typing(at);
    await openWork(at);
    for (const path of ['/numbers', '/channels', '/agenda', '/audit', '/journal']) await go(at, path);
    if (rounds.length === 0 || minutes() - (rounds.at(-1)?.minute ?? 0) >= 1)
      rounds.push(await held(at, minutes()));
  }
  return [...rounds, await held(at, minutes())];
}

/** MiB a minute by least squares. */
function slope(rounds: readonly Held[], of: (one: Held) => number): number {
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const x = mean(rounds.map((one) => one.minute));
  const y = mean(rounds.map(of));
  const over = rounds.reduce((sum, one) => sum + (one.minute - x) * (of(one) - y), 0);
  return (
    over /
    Math.max(
      1e-9,
      rounds.reduce((sum, one) => sum + (one.minute - x) ** 2, 0),
    )
  );
}

async function times(turns: number, once: () => Promise<number>): Promise<number> {
  const all: number[] = [];
  for (let turn = 0; turn < turns; turn += 1) all.push(await once());
  return median(all);
}

/** Prints a line for each measure, the large catalogue beside the small one. */
export async function bench(): Promise<void> {
  await ensurePages(console.log);
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
  const browser = await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--enable-precise-memory-info'],
  });
  const places: Place[] = [];
  for (const size of SIZES) places.push(await place(browser, folder, size));
  const [small, large] = places;
  if (!small || !large) return;
  for (const [name, measure] of [
    ['words typed to first found', typing],
    ['a work of 40 formats opened', openWork],
  ] as const) {
    const [few, many] = [await times(TURNS, () => measure(small)), await times(TURNS, () => measure(large))];
    console.log(
      `${name}: ${few.toFixed(0)} ms, ${many.toFixed(0)} ms with 100,000 formats: ${(many / few).toFixed(2)} ×`,
    );
  }
  const rounds = await use(large);
  const [first, last] = [rounds[0], rounds.at(-1)];
  if (first && last)
    console.log(
      `after ${last.minute.toFixed(1)} minutes of use: page ${first.pageMb.toFixed(0)} → ${last.pageMb.toFixed(0)} MiB ` +
        `(${slope(rounds, (one) => one.pageMb).toFixed(2)} a minute), host and store ${first.storeMb.toFixed(0)} → ${last.storeMb.toFixed(0)} MiB ` +
        `(${slope(rounds, (one) => one.storeMb).toFixed(2)} a minute)`,
    );
  for (const { page, host } of places) {
    await page.context().close();
    await host.stop();
  }
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
