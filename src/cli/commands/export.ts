import { existsSync } from 'node:fs';
import { z } from 'zod';
import { EXPORT_KINDS, type ExportKind } from '../../contract/exports.ts';
import { ONIX_VERSIONS } from '../../contract/onix.ts';
import { isoDate } from '../../contract/operation.ts';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { Failure, misuse } from '../failure.ts';
import { fetchFile } from '../files.ts';

const FORM = 'export FILE [--as KIND] [--work ID] [--replace]';

/** The kind with the longest ending that the file's name has. */
function kindOf(file: string): ExportKind | undefined {
  const fitting = EXPORT_KINDS.filter(({ ending }) => file.toLowerCase().endsWith(ending));
  return fitting.sort((a, b) => b.ending.length - a.ending.length)[0]?.kind;
}

export const exportFile: Command = {
  name: 'export',
  summary: 'Write the catalogue, or one work, as a file others can read; the name’s ending says as what.',
  forms: [FORM],
  options: [
    ['--as KIND', EXPORT_KINDS.map(({ kind, of }) => `${kind}: ${of}`).join('; ')],
    ['--work ID', 'one work alone'],
    ['--onix VERSION', 'ONIX 3.1 or 3.0; otherwise 3.1'],
    ['--short', 'ONIX with short tags in place of reference names'],
    ['--since DAY', 'ONIX of what changed since a day, YYYY-MM-DD'],
    ['--announced-only', 'ONIX without formats that no channel has seen yet'],
    ['--replace', 'write over a file that is there'],
  ],
  async run(args, io) {
    const shape = {
      as: z.enum(EXPORT_KINDS.map(({ kind }) => kind)).optional(),
      work: z.coerce.number().int().positive().optional(),
      replace: z.boolean().default(false),
      onix: z.enum(ONIX_VERSIONS, { error: 'Write --onix 3.1 or --onix 3.0' }).optional(),
      short: z.boolean().default(false),
      since: isoDate.optional(),
      'announced-only': z.boolean().default(false),
    };
    const { flags, words } = readArguments(args, FORM, shape, { least: 1, most: 1 });
    const [path = ''] = words;
    const as = flags.as ?? kindOf(path);
    if (as === undefined) throw misuse(`The ending of ${path} says nothing; name the kind with --as`, FORM);
    if (existsSync(path) && !flags.replace) {
      const message = `${path} is there already; choose another name, or write over it with --replace.`;
      throw new Failure({ code: 'ALREADY_EXISTS', message }, 2);
    }
    await withCatalogue(flags, io, 'read', (catalogue) => {
      const workId = flags.work;
      const onix = {
        version: flags.onix ?? '3.1',
        tags: flags.short ? ('short' as const) : ('reference' as const),
        announcedOnly: flags['announced-only'],
        ...(flags.since === undefined ? {} : { since: flags.since }),
      };
      const made = catalogue.call('exports.make', { as, onix, ...(workId === undefined ? {} : { workId }) });
      fetchFile(catalogue, made.file, path);
      if (flags.json) return printJson(io, { ...made, path });
      io.out(
        `${path}: ${made.records.toLocaleString('en')} records, ${made.bytes.toLocaleString('en')} bytes.`,
      );
      for (const note of made.notes) io.err(note);
    });
    return 0;
  },
};
