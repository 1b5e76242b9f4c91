import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { IsbnCheck } from '../../contract/isbns.ts';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, type Common, readArguments } from '../command.ts';
import { misuse } from '../failure.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';

const FORM = 'isbn check TEXT…';

/** As many texts as one operation takes. */
const MOST = 10_000;

function checkThere(flags: Common, io: Io, texts: string[]): IsbnCheck[] {
  return withCatalogue(flags, io, 'read', ({ call }) => call('isbns.check', { texts }).checks);
}

/** Without a catalogue numbers can still be checked; only where they stand is then unknown. */
function checkAnywhere(io: Io, texts: string[]): IsbnCheck[] {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  const scratch = { catalogue: join(folder, 'scratch.ledger'), json: false };
  try {
    const checks = withCatalogue(scratch, io, 'write', ({ call }) => call('isbns.check', { texts }).checks);
    return checks.map((check) => ({ ...check, standing: null, formatId: null }));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function row({ text, ok, hyphenated, agency, standing, problem }: IsbnCheck): string[] {
  if (ok) return [hyphenated ?? text, 'valid', [standing, agency].filter(Boolean).join(', ')];
  const more = [problem?.message, problem?.hint, problem?.repair ? `Perhaps ${problem.repair}.` : undefined];
  return [text, 'not valid', more.filter(Boolean).join(' ')];
}

export const isbn: Command = {
  name: 'isbn',
  summary: 'Check ISBNs given as words, or one a line on the standard input.',
  forms: [FORM, 'isbn check < FILE'],
  options: [],
  async run([verb, ...args], io) {
    if (verb !== 'check')
      throw misuse(verb === undefined ? 'Something is missing' : `There is no 'isbn ${verb}'`, FORM);
    const { flags, words } = readArguments(args, FORM, {}, { least: 0, most: MOST });
    const texts = words.length > 0 ? words : (await io.stdin()).split(/\r?\n/).filter((line) => line.trim());
    if (texts.length === 0) throw misuse('There is nothing to check', FORM);
    if (texts.length > MOST) throw misuse('Check at most 10,000 texts at once', FORM);
    const checks = existsSync(flags.catalogue) ? checkThere(flags, io, texts) : checkAnywhere(io, texts);
    if (flags.json) printJson(io, { checks });
    else io.out(table(['ISBN', 'Verdict', 'More'], checks.map(row)));
    return checks.every((check) => check.ok) ? 0 : 1;
  },
};
