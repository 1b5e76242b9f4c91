import type { InputOf } from '../../contract/index.ts';
import { type Reading, SHEET_FIELDS } from '../../contract/sheet-fields.ts';
import type { FoundColumn, SheetOutcome } from '../../contract/sheets.ts';
import { type Catalogue, printJson } from '../catalogue.ts';
import { fetchFile } from '../files.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';
import type { ImportFlags } from './import-flags.ts';
import { saidColumns } from './said-columns.ts';

type Chosen = InputOf<'sheets.import'>['columns'][number];

/** Problems printed one by one. */
const NAMED = 20;

function choose(found: FoundColumn, said: ReturnType<typeof saidColumns>, flags: ImportFlags): Chosen {
  const own = said.get(found.header.toLowerCase());
  const key = own ? own.field : (found.field ?? '');
  const field = SHEET_FIELDS.find((entry) => entry.key === key);
  const left: Partial<Record<string, Reading | undefined>> = {
    date: flags.dates ?? (own ? 'ymd' : undefined),
    amount: flags.decimals ?? (own ? 'point' : undefined),
  };
  return {
    index: found.index,
    field: field?.key ?? null,
    detail: own ? own.detail : found.detail,
    reading: found.reading ?? left[field?.kind ?? ''] ?? null,
  };
}

function print(io: Io, outcome: SheetOutcome, dryRun: boolean): void {
  const { counts, made, problems, problemsTotal } = outcome;
  io.out(
    `${dryRun ? 'Would come of it' : 'Recorded'}: ${counts.new} new, ${counts.changed} changed, ${counts.same} unchanged, ${counts.refused} refused.`,
  );
  io.out(
    `Works ${made.works}, editions ${made.editions}, formats ${made.formats}, numbers ${made.numbers}, listings ${made.listings}.`,
  );
  if (problems.length > 0) {
    const rows = problems
      .slice(0, NAMED)
      .map(({ row, header, text, message, repair }) => [
        String(row),
        header,
        text,
        repair === null ? message : `${message} (offered: ${repair})`,
      ]);
    io.out(table(['Row', 'Column', 'Cell', 'Why it is refused'], rows));
    if (problemsTotal > NAMED) io.out(`and ${problemsTotal - NAMED} more`);
  }
  for (const note of outcome.notes) io.err(note);
}

/**
 * Takes a table over. Ends with 1 when rows are refused and the good ones alone were not asked for; nothing is
 * recorded then.
 */
export function importSheet(catalogue: Catalogue, file: string, flags: ImportFlags, io: Io): number {
  const sheet = flags.sheet === undefined ? {} : { sheet: flags.sheet };
  const { columns } = catalogue.call('sheets.look', { file, ...sheet });
  const said = saidColumns(flags.columns, SHEET_FIELDS);
  const input = { file, ...sheet, columns: columns.map((column) => choose(column, said, flags)) };
  // The trial names every refused row; recording alone would name the first.
  let outcome = catalogue.call('sheets.import', { ...input, dryRun: true });
  const half = outcome.counts.refused > 0 && !flags['good-rows-only'];
  const dryRun = flags['dry-run'] || half;
  if (!dryRun) outcome = catalogue.call('sheets.import', { ...input, goodRowsOnly: flags['good-rows-only'] });
  if (outcome.refused && flags.refused !== undefined)
    fetchFile(catalogue, outcome.refused.file, flags.refused);
  if (flags.json) printJson(io, outcome);
  else print(io, outcome, dryRun);
  if (!half) return 0;
  io.err('Nothing was recorded: mend the rows, or record the good ones with --good-rows-only.');
  return 1;
}
