import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { App } from '../../src/app.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import { moveOf, randomNumbers, type Step, stepsFor } from '../support/history.ts';
import { type Figure, Tally } from './figure.ts';
import { DAY, grownCatalogue, openStill, reading } from './files.ts';
import { worldReader } from './world.ts';

/** A small disk in memory; null, with the reason, where this machine lets nobody mount one. */
function smallDisk(megabytes: number): { path: string; unmount: () => void } | { reason: string } {
  const path = mkdtempSync(join(tmpdir(), 'edition-ledger-disk-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'none', path], { stdio: 'pipe' });
  } catch (error) {
    rmSync(path, { recursive: true, force: true });
    return { reason: `no small disk can be mounted here (${(error as Error).message.split('\n')[0]})` };
  }
  const unmount = () => {
    // Lazily, so that a failed run that left a file open leaves no disk behind.
    execFileSync('umount', ['-l', path], { stdio: 'pipe' });
    rmSync(path, { recursive: true, force: true });
  };
  return { path, unmount };
}

/** Fills the disk until so many bytes are left. */
function fill(disk: string, left: number): void {
  const { bavail, bsize } = statfsSync(disk);
  writeFileSync(join(disk, 'ballast'), Buffer.alloc(Math.max(0, bavail * bsize - left)));
}

const makeRoom = (disk: string) => rmSync(join(disk, 'ballast'), { force: true });

type Head = { seq: number; hash: string } | undefined;

const headOf = (file: string): Head =>
  reading(
    file,
    (raw) =>
      raw
        .prepare('SELECT seq, hash FROM journal WHERE hash IS NOT NULL ORDER BY seq DESC LIMIT 1')
        .get() as Head,
  );

/** Works until the disk is full; answers the refusals that are not as they should be, and how many were of the disk. */
function workUntilFull(app: App, file: string, steps: Iterator<Step>, tally: Tally): string[] {
  const faults: string[] = [];
  let refused = 0;
  for (let tried = 0; tried < 400 && refused < 4; tried += 1) {
    const step = steps.next().value as Step;
    const move = reading(file, (raw) => moveOf(step, worldReader(raw)(), DAY));
    const before = headOf(file);
    const answer = app.call(move.name, move.input);
    const after = headOf(file);
    if (answer.ok) {
      if (after) tally.count('acknowledged changes', after.seq === before?.seq ? 0 : 1);
      continue;
    }
    const { code, message } = answer.error;
    if (code === 'INTERNAL' || (code === 'DISK_TROUBLE' && !message.startsWith('The disk')))
      faults.push(message);
    if (after?.seq !== before?.seq) faults.push(`${move.name} was refused and journalled`);
    if (code === 'DISK_TROUBLE') refused += 1;
  }
  if (refused > 0) tally.count('points where the disk was full');
  tally.count('refusals DISK_TROUBLE', refused);
  return faults;
}

/** Closes and opens with the disk full: it opens, or says that the disk is the trouble. */
function reopenFull(app: App, file: string, tally: Tally): { app: App | null; faults: string[] } {
  try {
    app.close();
  } catch (error) {
    return { app: null, faults: [`closing failed: ${String(error)}`] };
  }
  try {
    const opened = openStill(file);
    tally.count('opened on a full disk');
    return { app: opened, faults: [] };
  } catch (error) {
    const good = error instanceof Refusal && error.code === 'DISK_TROUBLE';
    tally.count('opening refused on a full disk', good ? 1 : 0);
    return { app: null, faults: good ? [] : [`opening failed: ${String(error)}`] };
  }
}

function faultsOfFile(app: App, file: string, head: Head): string[] {
  const check = app.call('catalogue.check', {});
  const value = check.ok ? (check.value as { ok: boolean; sentences: string[] }) : null;
  const faults = value?.ok ? [] : (value?.sentences ?? ['the check was refused']);
  const kept = reading(file, (raw) =>
    raw.prepare('SELECT hash FROM journal WHERE seq = ?').pluck().get(head?.seq),
  );
  if (kept !== head?.hash) faults.push('an acknowledged change is lost');
  return faults;
}

/** Fills a small disk to random levels while commands run; nothing acknowledged is lost, and work goes on with room. */
export function fullDisks(points: number, seed: number): Figure {
  const tally = new Tally('a full disk while working');
  const disk = smallDisk(24);
  if ('reason' in disk) return tally.figure(`skipped: ${disk.reason}`);
  try {
    mkdirSync(join(disk.path, 'press'));
    const file = join(disk.path, 'press', 'full.ledger');
    grownCatalogue(file, 40);
    const next = randomNumbers(seed);
    const steps = stepsFor(seed, 10);
    let app: App | null = openStill(file);
    for (let point = 0; point < points; point += 1) {
      app ??= openStill(file);
      fill(disk.path, next() % 400_000);
      const faults = workUntilFull(app, file, steps, tally);
      const head = headOf(file);
      if (next() % 3 === 0) {
        fill(disk.path, next() % 40_000);
        const again = reopenFull(app, file, tally);
        faults.push(...again.faults);
        app = again.app;
      }
      makeRoom(disk.path);
      app ??= openStill(file);
      faults.push(...faultsOfFile(app, file, head));
      const after = app.call('works.create', { title: `With room again ${point}` });
      if (!after.ok) faults.push(`work does not go on: ${after.error.message}`);
      tally.add(faults.length > 0 ? [`point ${point} of seed ${seed}: ${faults.join('; ')}`] : []);
    }
    app?.close();
  } finally {
    disk.unmount();
  }
  return tally.figure();
}
