import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readFile } from '../../src/exchange/proof-files/read.ts';
import { checkFile } from '../../src/rules/proof-check/index.ts';
import { drawInterior, interiorRecord, SALT_ALMANAC } from '../support/proof-files/interior.ts';

const PAGES = 300;
const ROUNDS = 5;

/** Milliseconds of wall clock and of processor time (this process, or a child's own). */
interface Took {
  wall: number;
  processor: number;
}

/** Both programs on the same file, one after the other, with the shell's own count of processor time. */
function outside(path: string): Took {
  const start = performance.now();
  const timed = spawnSync(
    'bash',
    ['-c', 'pdfinfo -box -f 1 -l 99999 "$1" >/dev/null && pdftotext "$1" /dev/null && times', '-', path],
    {
      encoding: 'utf8',
    },
  );
  const wall = performance.now() - start;
  const ofChildren = timed.stdout.trim().split('\n').at(-1) ?? '';
  const processor = [...ofChildren.matchAll(/(\d+)m([\d.]+)s/g)].reduce(
    (sum, [, minutes, seconds]) => sum + Number(minutes) * 60_000 + Number(seconds) * 1_000,
    0,
  );
  return { wall, processor };
}

async function own(path: string): Promise<Took & { lines: number; steps: number }> {
  const start = performance.now();
  const before = process.cpuUsage();
  let steps = 0;
  const { facts } = await readFile(path, {
    kind: 'interior',
    step: () => {
      steps += 1;
    },
  });
  const lines = checkFile('interior', facts, interiorRecord({ pages: PAGES }));
  const { user, system } = process.cpuUsage(before);
  return { wall: performance.now() - start, processor: (user + system) / 1_000, lines: lines.length, steps };
}

const least = (all: readonly Took[], key: keyof Took) => Math.min(...all.map((one) => one[key]));

/** A 300-page interior read and checked, beside pdfinfo and pdftotext on the same file. */
export async function bench(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-proof-'));
  try {
    const path = join(folder, 'interior.pdf');
    const pages = Array.from({ length: PAGES }, (_, i) => SALT_ALMANAC[i < 4 ? i : 4 + ((i - 4) % 20)] ?? []);
    writeFileSync(path, await drawInterior(pages));
    const ours: Awaited<ReturnType<typeof own>>[] = [];
    for (let i = 0; i < ROUNDS; i += 1) ours.push(await own(path));
    const [first] = ours;
    console.log(
      `${PAGES} pages read and checked: ${Math.round(least(ours, 'wall'))} ms (${Math.round(least(ours, 'processor'))} ms of processor time), ${first?.lines} lines, ${first?.steps} steps of progress; the best of ${ROUNDS}.`,
    );
    if (spawnSync('pdftotext', ['-v']).error) {
      console.log('pdfinfo and pdftotext are not on this machine, so there is nothing to set it against.');
      return;
    }
    const theirs = Array.from({ length: ROUNDS }, () => outside(path));
    console.log(
      `pdfinfo -box and pdftotext on the same file: ${Math.round(least(theirs, 'wall'))} ms (${Math.round(least(theirs, 'processor'))} ms of processor time).`,
    );
    const ratio = (key: keyof Took) => (least(ours, key) / least(theirs, key)).toFixed(1);
    console.log(
      `Ratio ${ratio('wall')} by the clock, ${ratio('processor')} by processor time; ours draws every page and looks at its fonts, pictures and colours as well.`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
