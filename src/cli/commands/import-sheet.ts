import type { InputOf } from '../../contract/index.ts';
import { type Reading, SHEET_FIELDS, sheetFieldKey } from '../../contract/sheet-fields.ts';
import type { FoundColumn, SheetOutcome } from '../../contract/sheets.ts';
import { type Catalogue, printJson } from '../catalogue.ts';
import { Failure } from '../failure.ts';
import { fetchFile } from '../files.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';
import type { ImportFlags } from './import-flags.ts';

type Chosen = InputOf<'sheets.import'>['columns'][number];

/** Problems printed one by one. */
const NAMED = 20;

/** 'Header=field detail' by the header; an empty field leaves the column out. */
function saidColumns(text: string | undefined): Map<string, { field: string; detail: string }> {
  const said = new Map<string, { field: string; detail: string }>();
  for (const part of (text ?? '').split(',')) {
    if (part.trim() === '') continue;
    const [header = '', value] = part.split('=');
    const [field = '', ...detail] = (value ?? '').trim().split(/\s+/);
    const known = field === '' || sheetFieldKey.safeParse(field).success;
    if (value === undefined || !known) {
      const fields = SHEET_FIELDS.map(({ key }) => key).join(', ');
      const message = `--columns cannot be read at '${part.trim()}'; write Header=field, the field one of: ${fields}.`;
      throw new Failure({ code: 'BAD_INPUT', message, field: 'columns' }, 2);
    }
    said.set(header.trim().toLowerCase(), { field, detail: detail.join(' ') });
  }
  return said;
}

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
  const said = saidColumns(flags.columns);
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
