import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, renameSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, type Common, readArguments } from '../command.ts';
import { Failure } from '../failure.ts';
import type { Io } from '../io.ts';

const FORM = 'restore BACKUP [--catalogue FILE]';

/** Files SQLite keeps beside a catalogue file; they must never meet another file's pages. */
const COMPANIONS = ['', '-wal', '-shm', '-journal'];

/** Opens a file as a catalogue and has it checked whole; throws a `Failure` when it is not sound. */
async function proveSound(flags: Common, io: Io, file: string): Promise<void> {
  const silent = { ...io, out: () => {}, err: () => {} };
  await withCatalogue({ ...flags, catalogue: file }, silent, 'read', ({ call }) => {
    const { ok, sentences } = call('catalogue.check', {});
    if (ok) return;
    const message = `${file} is not sound: ${sentences.join(' ')} Choose another backup; nothing was changed.`;
    throw new Failure({ code: 'CATALOGUE_DAMAGED', message }, 2);
  });
}

/**
 * Makes sure that nobody holds the file. A sound one is backed up as well; a damaged one passes, since it is what
 * a restore is for, and stays beside the new one in any case.
 */
async function leaveInPeace(flags: Common, io: Io): Promise<void> {
  const silent = { ...io, out: () => {}, err: () => {} };
  try {
    await withCatalogue(flags, silent, 'write', ({ call }) => call('backups.make', {}));
  } catch (error) {
    if (!(error instanceof Failure) || error.body.code !== 'CATALOGUE_DAMAGED') throw error;
  }
}

function flush(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function move(from: string, to: string): void {
  for (const companion of COMPANIONS) {
    if (existsSync(from + companion)) renameSync(from + companion, to + companion);
  }
}

/** Puts a copy of `backup` in the place of `file`; what stood there is kept under the name it answers with. */
async function putBack(flags: Common, io: Io, backup: string): Promise<string | null> {
  const file = resolve(flags.catalogue);
  const arriving = `${file}.restoring`;
  const kept = `${file}.replaced-${new Date().toISOString().replaceAll(/[:.]/g, '-')}`;
  copyFileSync(backup, arriving);
  flush(arriving);
  const stood = existsSync(file);
  move(file, kept);
  renameSync(arriving, file);
  if (process.platform !== 'win32') flush(dirname(file));
  try {
    await proveSound(flags, io, file);
  } catch (error) {
    move(kept, file);
    throw error;
  }
  return stood ? kept : null;
}

export const restore: Command = {
  name: 'restore',
  summary: 'Put a backup in the place of the catalogue, even of a damaged one; what stood there is kept.',
  forms: [FORM],
  options: [],
  async run(args, io) {
    const { flags, words } = readArguments(args, FORM, {}, { least: 1, most: 1 });
    const backup = resolve(words[0] ?? '');
    if (backup === resolve(flags.catalogue)) {
      const message = 'The backup and the catalogue are one file; name another with --catalogue FILE.';
      throw new Failure({ code: 'BAD_INPUT', message, field: 'catalogue' }, 2);
    }
    if (!existsSync(backup)) {
      const message = `There is no file ${backup}; edition-ledger backup list shows the backups.`;
      throw new Failure({ code: 'NOT_FOUND', message }, 2);
    }
    await proveSound(flags, io, backup);
    if (existsSync(flags.catalogue)) await leaveInPeace(flags, io);
    const kept = await putBack(flags, io, backup);
    if (flags.json) printJson(io, { restored: backup, kept });
    else {
      const before = kept === null ? '' : ` What stood there is kept as ${kept}.`;
      io.out(`${resolve(flags.catalogue)} is now as it was in ${backup}.${before}`);
    }
    return 0;
  },
};
