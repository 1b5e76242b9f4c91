import { copyFileSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { moveOf, randomNumbers, stepsFor } from '../support/history.ts';
import { type Figure, Tally } from './figure.ts';
import { DAY, grownCatalogue, inFolder, openStill, reading } from './files.ts';
import { worldReader } from './world.ts';

/** A commit: how long the log was when it was acknowledged, and the journal's newest seal. */
interface Commit {
  size: number;
  head: string;
}

const headOf = (file: string) =>
  reading(file, (raw) =>
    String(
      raw.prepare('SELECT hash FROM journal WHERE hash IS NOT NULL ORDER BY seq DESC LIMIT 1').pluck().get(),
    ),
  );

/** Writes commands until the log is long, and copies file and log as they lie on disk with the program running. */
function logOf(file: string, seed: number, kept: { file: string; log: string }): Commit[] {
  const commits: Commit[] = [{ size: 0, head: headOf(file) }];
  const app = openStill(file);
  try {
    reading(file, (raw) => {
      const read = worldReader(raw);
      for (const step of stepsFor(seed, 5)) {
        const move = moveOf(step, read(), DAY);
        app.call(move.name, move.input);
        const head = headOf(file);
        const { size } = statSync(`${file}-wal`);
        if (head !== commits.at(-1)?.head) commits.push({ size, head });
        // A log of a thousand pages is written back; this one must not be.
        if (size > 3_000_000) return;
      }
    });
    copyFileSync(file, kept.file);
    copyFileSync(`${file}-wal`, kept.log);
    return commits;
  } finally {
    app.close();
  }
}

/** Opens a file with what is left of its log; answers what is not as the last whole commit left it. */
function faultsOf(file: string, whole: Commit | undefined): string[] {
  const app = openStill(file);
  try {
    const check = app.call('catalogue.check', {});
    const { ok, sentences } = check.ok
      ? (check.value as { ok: boolean; sentences: string[] })
      : { ok: false, sentences: [check.error.message] };
    const faults = ok ? [] : [...sentences];
    if (headOf(file) !== whole?.head) faults.push('it does not stand where the last whole commit left it');
    return faults;
  } finally {
    app.close();
  }
}

/**
 * Power cuts, as far as they can be played: the write-ahead log ends anywhere, with or without rubbish after it, or is
 * damaged anywhere. What opens must be exactly the last commit that lies whole before that place.
 */
export function tornLogs(cuts: number, seed: number): Figure {
  return inFolder((folder) => {
    const tally = new Tally('power cuts: logs cut off or damaged anywhere');
    const [file, kept, log] = ['torn.ledger', 'kept', 'kept-log'].map((name) => join(folder, name)) as [
      string,
      string,
      string,
    ];
    grownCatalogue(file, 60);
    const commits = logOf(file, seed, { file: kept, log });
    const bytes = readFileSync(log);
    const next = randomNumbers(seed);
    for (let at = 0; at < cuts; at += 1) {
      for (const companion of ['-shm', '-hold']) rmSync(file + companion, { force: true });
      copyFileSync(kept, file);
      const place = next() % bytes.length;
      const kind = (['cut off', 'cut off, rubbish after', 'damaged'] as const)[next() % 3] ?? 'cut off';
      const torn = kind === 'damaged' ? Buffer.from(bytes) : Buffer.from(bytes.subarray(0, place));
      if (kind === 'damaged') torn.writeUInt8(torn.readUInt8(place) ^ (1 << (next() % 8)), place);
      const rubbish = Buffer.from(Array.from({ length: next() % 9000 }, () => next() % 256));
      writeFileSync(`${file}-wal`, kind === 'cut off, rubbish after' ? Buffer.concat([torn, rubbish]) : torn);
      const whole = commits.findLast((commit) => commit.size <= place);
      const faults = faultsOf(file, whole);
      tally.add(faults.length > 0 ? [`${kind} at ${place} of ${bytes.length}: ${faults.join(' ')}`] : []);
      tally.count(kind);
    }
    return tally.figure(`${commits.length - 1} commits in the log`);
  });
}
