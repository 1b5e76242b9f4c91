import { type Catalogue, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { misuse } from '../failure.ts';
import { putFile } from '../files.ts';
import type { Io } from '../io.ts';
import { importChanges } from './import-changes.ts';
import { IMPORT_SHAPE, type ImportFlags } from './import-flags.ts';
import { importOnix } from './import-onix.ts';
import { importReport } from './import-report.ts';
import { importSheet } from './import-sheet.ts';
import { importWhole } from './import-whole.ts';

const FORM = 'import FILE [--as KIND] [--dry-run] [--good-rows-only] [--refused FILE]';

/** One kind of file that can be taken over from the shell. */
interface ImportKind {
  kind: string;
  of: string;
  endings: readonly string[];
  /** Takes the file over that lies ready; answers with the exit code. */
  run(catalogue: Catalogue, file: string, flags: ImportFlags, io: Io): number;
}

/** The kinds of file, asked in this order. */
const KINDS: readonly ImportKind[] = [
  {
    kind: 'table',
    of: 'CSV or XLSX, one row a format',
    endings: ['.csv', '.tsv', '.txt', '.xlsx'],
    run: importSheet,
  },
  {
    kind: 'onix',
    of: 'ONIX for Books 3.1, 3.0 or 2.1, XML',
    endings: ['.xml', '.onix', '.onx'],
    run: importOnix,
  },
  {
    kind: 'changes',
    of: 'what was done in a copy of this list, merged',
    endings: ['.changes.json'],
    run: importChanges,
  },
  {
    kind: 'json',
    of: 'a whole catalogue, into an empty one',
    endings: ['.json'],
    run: importWhole,
  },
  {
    kind: 'report',
    of: 'what a channel lists, CSV or XLSX, set against the record',
    // Its endings are those of a table, so it is always named.
    endings: [],
    run: importReport,
  },
];

export const importFile: Command = {
  name: 'import',
  summary:
    'Take a file over: nothing is recorded unless all of it is understood, or the good rows are asked for.',
  forms: [FORM],
  options: [
    ['--as KIND', KINDS.map(({ kind, of }) => `${kind}: ${of}`).join('; ')],
    ['--dry-run', 'only tell what would come of it'],
    ['--good-rows-only', 'record what is understood and leave out the rest'],
    ['--refused FILE', 'where the refused rows go, to be mended and imported again'],
    ['--sheet NAME', 'sheet of a workbook; otherwise the first'],
    ['--channel NAME', 'of a report: the channel whose it is'],
    ['--on DAY', 'of a report: the day it tells of; otherwise today'],
    ['--partial', 'of a report: it does not list everything, so what is missing from it tells nothing'],
    ['--keep here|there', 'of changes: which side holds where both have changed the same'],
    ['--columns TEXT', 'what columns hold: "Header=field, Other=price GBP, Third=" (empty leaves one out)'],
    ['--dates dmy|mdy', 'order of day and month where the cells leave it open'],
    ['--decimals point|comma', 'mark before decimals where the cells leave it open'],
  ],
  async run(args, io) {
    const { flags, words } = readArguments(args, FORM, IMPORT_SHAPE, { least: 1, most: 1 });
    const [path = ''] = words;
    const kind = KINDS.find((entry) =>
      flags.as === undefined
        ? entry.endings.some((ending) => path.toLowerCase().endsWith(ending))
        : entry.kind === flags.as,
    );
    if (!kind)
      throw misuse(
        flags.as === undefined
          ? `The ending of ${path} says nothing; name the kind with --as`
          : `There is no kind '${flags.as}'`,
        FORM,
      );
    return withCatalogue(flags, io, 'write', (catalogue) =>
      kind.run(catalogue, putFile(catalogue, path), flags, io),
    );
  },
};
