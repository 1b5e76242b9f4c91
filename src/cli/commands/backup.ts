import type { Backup } from '../../contract/backups.ts';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { misuse, unknownVerb } from '../failure.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';

async function make(args: string[], io: Io): Promise<number> {
  const { flags } = readArguments(args, 'backup make', {}, { least: 0, most: 0 });
  await withCatalogue(flags, io, 'read', ({ call }) => {
    const made = call('backups.make', {});
    if (flags.json) printJson(io, made);
    else io.out(`Backed up and proven sound: ${made.path}`);
  });
  return 0;
}

function row({ at, kind, bytes, path }: Backup): string[] {
  return [at, kind, `${Math.ceil(bytes / 1024).toLocaleString('en')}`, path];
}

async function list(args: string[], io: Io): Promise<number> {
  const { flags } = readArguments(args, 'backup list', {}, { least: 0, most: 0 });
  await withCatalogue(flags, io, 'read', ({ call }) => {
    const answer = call('backups.list', {});
    if (flags.json) printJson(io, answer);
    else if (answer.backups.length === 0) io.out(`There is no backup in ${answer.folder} yet.`);
    else io.out(table(['Taken at', 'Why', 'KiB', 'File'], answer.backups.map(row)));
  });
  return 0;
}

export const backup: Command = {
  name: 'backup',
  summary: 'Take a backup that is proven sound, or list the backups.',
  forms: ['backup make', 'backup list'],
  options: [],
  async run([verb, ...args], io) {
    if (verb === 'make') return make(args, io);
    if (verb === 'list') return list(args, io);
    throw misuse(unknownVerb('backup', verb), 'backup make | list');
  },
};
