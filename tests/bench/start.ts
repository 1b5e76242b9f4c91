import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { type Browser, chromium } from 'playwright-core';
import { openApp } from '../../src/app.ts';
import { ensurePages } from '../../src/host/build-pages.ts';
import { raiseJournalTriggers } from '../../src/store/journal-triggers.ts';
import { startHostProcess } from '../support/host-process.ts';
import { gzipKb, INITIAL_BUDGET_KB } from '../support/initial-js.ts';

// Cold start through the loopback host: from the command to a Catalogue that can be used, in a browser that is
// running already, with an empty catalogue and with one of 100,000 formats. The rows are laid in without the
// journal, which is not what is measured.

const WORKS = 25_000;
const RUNS = 3;

function layFormats(file: string): void {
  openApp({ file }).close();
  const raw = new Database(file);
  const journalTriggers = raw
    .prepare("SELECT name FROM sqlite_master WHERE type = 'trigger' AND name LIKE 'journal\\_%' ESCAPE '\\'")
    .all() as { name: string }[];
  for (const { name } of journalTriggers) {
    if (/^journal_(work|edition|format)_/.test(name)) raw.exec(`DROP TRIGGER ${name}`);
  }
  const counted = `WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ?)`;
  raw.prepare(`${counted} INSERT INTO work (title, note) SELECT 'Work ' || i, '' FROM n`).run(WORKS);
  raw
    .prepare(
      "INSERT INTO edition (work_id, number, title, language) SELECT work.id, n.i, work.title, 'eng' FROM work, (SELECT 1 AS i UNION SELECT 2) AS n",
    )
    .run();
  raw
    .prepare(
      "INSERT INTO format (edition_id, form, planned_on) SELECT edition.id, n.form, '2026-01-02' FROM edition, (SELECT 'BC' AS form UNION SELECT 'BB') AS n",
    )
    .run();
  raiseJournalTriggers(raw);
  raw.close();
}

interface Start {
  host: number;
  usable: number;
  scripts: number;
  kb: number;
}

/** `sign` is what shows that the Catalogue can be used. */
async function measure(browser: Browser, file: string, sign: string): Promise<Start> {
  const began = performance.now();
  const { url, stop } = await startHostProcess(file);
  const host = performance.now() - began;
  const page = await (await browser.newContext()).newPage();
  const scripts: Promise<Buffer>[] = [];
  page.on('response', (reply) => {
    if (reply.request().resourceType() === 'script') scripts.push(reply.body());
  });
  await page.goto(url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.locator(sign).first().waitFor({ timeout: 120_000 });
  const usable = performance.now() - began;
  const kb = (await Promise.all(scripts)).reduce((sum, body) => sum + gzipKb(body), 0);
  await page.context().close();
  await stop();
  return { host, usable, scripts: scripts.length, kb };
}

/** Prints the medians of some starts with each catalogue. */
export async function bench(): Promise<void> {
  await ensurePages(console.log);
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  const large = join(folder, 'large.ledger');
  layFormats(large);
  for (const [name, file, sign] of [
    ['an empty catalogue', join(folder, 'empty.ledger'), 'main button'],
    ['100,000 formats', large, 'main .works-list li'],
  ] as const) {
    const runs: Start[] = [];
    for (let run = 0; run < RUNS; run += 1) runs.push(await measure(browser, file, sign));
    const middle = runs.toSorted((a, b) => a.usable - b.usable)[Math.floor(RUNS / 2)];
    if (middle === undefined) continue;
    console.log(
      `${name}: host ready ${middle.host.toFixed(0)} ms, Catalogue usable ${middle.usable.toFixed(0)} ms after the command; ` +
        `JavaScript ${middle.kb.toFixed(1)} of ${INITIAL_BUDGET_KB} kB under gzip in ${middle.scripts} files (median of ${RUNS})`,
    );
    if (middle.kb > INITIAL_BUDGET_KB) process.exitCode = 1;
  }
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
