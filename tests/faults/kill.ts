import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { buildSync } from 'esbuild';
import { openApp } from '../../src/app.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import { randomNumbers } from '../support/history.ts';
import { type Figure, Tally } from './figure.ts';
import { reading } from './files.ts';

const ROOT = join(import.meta.dirname, '../..');

/** The writer in one file, so that it starts fast; beside the sources, so that it finds packages and migrations. */
function bundledWriter(): string {
  mkdirSync(join(ROOT, 'test-output'), { recursive: true });
  const folder = mkdtempSync(join(ROOT, 'test-output/writer-'));
  const outfile = join(folder, 'writer.mjs');
  buildSync({
    entryPoints: [join(import.meta.dirname, 'writer.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['better-sqlite3'],
  });
  return outfile;
}

interface Acknowledged {
  seq: number;
  hash: string;
}

/** What a writer said before it was killed. */
interface Killed {
  ready: boolean;
  acknowledged: Acknowledged[];
  err: string;
}

/** Starts a writer and kills it with SIGKILL so many milliseconds after its start, or after it is ready. */
function writeAndKill(
  writer: string,
  file: string,
  seed: number,
  fromStart: boolean,
  delay: number,
): Promise<Killed> {
  return new Promise((resolve, reject) => {
    const child: ChildProcess = spawn(process.execPath, [writer, file, String(seed)], { stdio: 'pipe' });
    let out = '';
    let err = '';
    let timer: NodeJS.Timeout | undefined;
    const arm = () => {
      timer ??= setTimeout(() => child.kill('SIGKILL'), delay);
    };
    if (fromStart) arm();
    child.stdout?.on('data', (part: Buffer) => {
      out += part.toString();
      if (out.includes('ready\n')) arm();
    });
    child.stderr?.on('data', (part: Buffer) => (err += part.toString()));
    child.on('error', reject);
    child.on('close', () => {
      clearTimeout(timer);
      // The last line may be cut off by the kill; what was not said whole was not acknowledged.
      const lines = out.split('\n').slice(0, -1);
      const acknowledged = lines
        .filter((line) => line !== 'ready')
        .map((line) => line.split(' '))
        .map(([seq, hash = '']) => ({ seq: Number(seq), hash }));
      resolve({ ready: lines[0] === 'ready', acknowledged, err });
    });
  });
}

/** Opens the file as after a power cut and looks for everything that was acknowledged; answers what is wrong. */
function faultsAfterKill(file: string, acknowledged: readonly Acknowledged[], readOnly: boolean): string[] {
  try {
    const app = openApp({ file, readOnly });
    try {
      const check = app.call('catalogue.check', {});
      if (!check.ok) return [check.error.message];
      const { ok, sentences } = check.value as { ok: boolean; sentences: string[] };
      const info = app.call('catalogue.info', {});
      const warnings = info.ok ? (info.value as { warnings: string[] }).warnings : [info.error.message];
      const lost = reading(file, (raw) => {
        const entry = raw.prepare('SELECT 1 FROM journal WHERE seq = ? AND hash = ?');
        return acknowledged.filter(({ seq, hash }) => entry.get(seq, hash) === undefined);
      });
      return [
        ...(ok ? [] : sentences),
        ...warnings,
        ...lost.map(({ seq }) => `the acknowledged change ${seq} is lost`),
      ];
    } finally {
      app.close();
    }
  } catch (error) {
    return [error instanceof Refusal ? error.message : String(error)];
  }
}

/** One line of kills on files of its own; each file is killed over and over, then a new one is begun. */
async function lineOfKills(
  tally: Tally,
  {
    writer,
    folder,
    kills,
    seed,
    perFile,
  }: { writer: string; folder: string; kills: number; seed: number; perFile: number },
): Promise<void> {
  const next = randomNumbers(seed);
  let acknowledged: Acknowledged[] = [];
  let file = '';
  for (let at = 0; at < kills; at += 1) {
    if (at % perFile === 0) {
      if (file !== '') rmSync(file, { force: true });
      file = join(folder, `killed-${seed}-${at}.ledger`);
      acknowledged = [];
    }
    // Some are killed while they open, recover or make the file, most in the middle of their work.
    const fromStart = next() % 6 === 0;
    const delay = fromStart ? next() % 400 : next() % 200;
    const killed = await writeAndKill(writer, file, next(), fromStart, delay);
    acknowledged.push(...killed.acknowledged);
    tally.count('acknowledged changes', killed.acknowledged.length);
    if (!killed.ready) tally.count('killed before the first change');
    const made = statSync(file, { throwIfNoEntry: false });
    // Reading leaves the log as the kill left it, for the next writer to recover; writing recovers it here.
    const readOnly = next() % 2 === 0 && made !== undefined && made.size > 0 && acknowledged.length > 0;
    const faults = faultsAfterKill(file, acknowledged, readOnly);
    if (killed.err !== '') faults.push(killed.err);
    tally.add(faults.length > 0 ? [`kill ${at} of seed ${seed}: ${faults.join('; ')}`] : []);
  }
}

/** Kills writing processes at random moments; every acknowledged change must be there, and nothing half-made. */
export async function kills(count: number, seed: number, perFile = 25): Promise<Figure> {
  const tally = new Tally('kill −9 of a writing process');
  const writer = bundledWriter();
  const folder = join(writer, '..');
  try {
    const half = Math.ceil(count / 2);
    await Promise.all([
      lineOfKills(tally, { writer, folder, kills: half, seed, perFile }),
      lineOfKills(tally, { writer, folder, kills: count - half, seed: seed + 1, perFile }),
    ]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return tally.figure();
}
