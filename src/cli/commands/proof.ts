import { z } from 'zod';
import type { CheckDetail } from '../../contract/proof-checks/checks.ts';
import { FILE_KINDS, type FileKind } from '../../contract/terms.ts';
import { type Catalogue, printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { Failure } from '../failure.ts';
import { putFile } from '../files.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';

const FORM = 'proof FILE --format ISBN|ID [--as interior|cover|e-book|audio] [--json]';

/** The format that carries a number, or has an id. */
function formatOf({ call }: Catalogue, given: string): number {
  if (/^\d{1,9}$/.test(given)) return Number(given);
  const [found] = call('isbns.check', { texts: [given] }).checks;
  if (found?.formatId) return found.formatId;
  const message = `No format carries ${given}; name it by its ISBN or by its id.`;
  throw new Failure({ code: 'NOT_FOUND', message, field: 'format' }, 2);
}

/** The kind that is named, or the first of the format: its interior, e-book or sound. */
function kindOf({ call }: Catalogue, formatId: number, as: FileKind | undefined): FileKind {
  const [first] = call('proofChecks.list', { formatId }).kinds;
  return as ?? first?.kind ?? 'interior';
}

function print(io: Io, { lines, fileName, formatName, sha256 }: CheckDetail): void {
  io.out(`${fileName} against ${formatName} (SHA-256 ${sha256})`);
  const rows = lines.map(({ state, label, expected, found, page }) => [
    state,
    label,
    expected,
    found,
    page === null ? '' : `${page}`,
  ]);
  io.out(table(['Result', 'What', 'On record', 'In the file', 'Page'], rows));
  for (const { state, label, advice } of lines)
    if (state !== 'agreed' && advice !== '') io.out(`${label}: ${advice}`);
  io.out('This check advises; the printer’s and the channel’s own check prevails.');
}

export const proof: Command = {
  name: 'proof',
  summary:
    'Check a final file against the record of its format, and keep the result; ends with 1 when something differs.',
  forms: [FORM],
  options: [
    ['--format ISBN|ID', 'the format that the file is of'],
    ['--as KIND', 'which file it is; the interior, the e-book or the sound when left out'],
  ],
  async run(args, io) {
    const shape = {
      format: z.string({ error: 'Name the format with --format' }).min(1),
      as: z.enum(FILE_KINDS, { error: 'Write --as interior, cover, e-book or audio' }).optional(),
    };
    const { flags, words } = readArguments(args, FORM, shape, { least: 1, most: 1 });
    return withCatalogue(flags, io, 'write', async (catalogue) => {
      const formatId = formatOf(catalogue, flags.format);
      const kind = kindOf(catalogue, formatId, flags.as);
      const file = putFile(catalogue, words[0] ?? '');
      const { reading } = await catalogue.read('proofChecks.read', { file, kind });
      const { id, counts } = catalogue.call('proofChecks.record', { formatId, kind, reading });
      const check = catalogue.call('proofChecks.show', { checkId: id });
      if (flags.json) printJson(io, check);
      else print(io, check);
      return counts.differs > 0 ? 1 : 0;
    });
  },
};
