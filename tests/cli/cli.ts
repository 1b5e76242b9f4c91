import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../src/cli/run.ts';
import { PROGRAM } from '../../src/host/home.ts';
import { type Ended, runNode } from '../support/spawn.ts';

export const BIN = join(PROGRAM, 'src/cli/bin.js');
export const CAUTION = 'Demo catalogue: its numbers are invented and must never be printed.';

/** A path for a catalogue file that does not exist yet. */
export function newFile(): string {
  return join(mkdtempSync(join(tmpdir(), 'edition-ledger-cli-')), 'catalogue.ledger');
}

/** Runs the command line as it stands, on one catalogue file. */
export function cli(file: string, ...args: string[]): Promise<Ended> {
  return runNode([BIN, ...args, '--catalogue', file]);
}

/** The same in this process: the program is loaded once instead of for every command. */
export async function here(file: string, args: string[], stdin: unknown = ''): Promise<Ended> {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    out: (text: string) => void out.push(`${text}\n`),
    err: (text: string) => void err.push(`${text}\n`),
    stdin: async () => (typeof stdin === 'string' ? stdin : JSON.stringify(stdin)),
  };
  const code = await run([...args, '--catalogue', file], io);
  return { code, out: out.join(''), err: err.join('') };
}
