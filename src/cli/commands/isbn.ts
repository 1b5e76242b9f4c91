import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { IsbnCheck } from '../../contract/isbns.ts';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, type Common, readArguments } from '../command.ts';
import { misuse, unknownVerb } from '../failure.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';

const FORM = 'isbn check TEXT…';

/** As many texts as one operation takes. */
const MOST = 10_000;

type Show = (checks: IsbnCheck[]) => void;

async function checkThere(flags: Common, io: Io, texts: string[], show: Show): Promise<void> {
  await withCatalogue(flags, io, 'read', ({ call }) => show(call('isbns.check', { texts }).checks));
}

/** Without a catalogue numbers can still be checked; only where they stand is then unknown. */
async function checkAnywhere(io: Io, texts: string[], show: Show): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  const scratch = { catalogue: join(folder, 'scratch.ledger'), json: false };
  try {
    await withCatalogue(scratch, io, 'write', ({ call }) => {
      const { checks } = call('isbns.check', { texts });
      show(checks.map((check) => ({ ...check, standing: null, formatId: null })));
    });
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
    if (verb !== 'check') throw misuse(unknownVerb('isbn', verb), FORM);
    const { flags, words } = readArguments(args, FORM, {}, { least: 0, most: MOST });
    const texts = words.length > 0 ? words : (await io.stdin()).split(/\r?\n/).filter((line) => line.trim());
    if (texts.length === 0) throw misuse('There is nothing to check', FORM);
    if (texts.length > MOST) throw misuse('Check at most 10,000 texts at once', FORM);
    let sound = true;
    const show: Show = (checks) => {
      sound = checks.every((check) => check.ok);
      if (flags.json) printJson(io, { checks });
      else io.out(table(['ISBN', 'Verdict', 'More'], checks.map(row)));
    };
    if (existsSync(flags.catalogue)) await checkThere(flags, io, texts, show);
    else await checkAnywhere(io, texts, show);
    return sound ? 0 : 1;
  },
};
