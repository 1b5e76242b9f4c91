import type { InputOf } from '../../contract/index.ts';
import type { ReportPreview } from '../../contract/reports.ts';
import { REPORT_FIELDS, type Reading } from '../../contract/sheet-fields.ts';
import { type Catalogue, printJson } from '../catalogue.ts';
import { Failure } from '../failure.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';
import type { ImportFlags } from './import-flags.ts';
import { saidColumns } from './said-columns.ts';

type Columns = InputOf<'reports.preview'>['columns'];

/** Lines printed one by one. */
const NAMED = 50;

/** The id of the channel that is named. */
function channelOf(catalogue: Catalogue, name: string | undefined): number {
  const { channels } = catalogue.call('channels.list', {});
  const found = channels.find((one) => one.name.toLowerCase() === name?.toLowerCase());
  if (found) return found.id;
  const names = channels.map((one) => `'${one.name}'`).join(', ');
  const message = `${name === undefined ? 'Say whose report it is with --channel NAME' : `There is no channel '${name}'`}; there are: ${names}.`;
  throw new Failure({ code: 'BAD_INPUT', message, field: 'channelId' }, 2);
}

/** The columns as they were found, some of them said otherwise. */
function columnsOf(catalogue: Catalogue, file: string, channelId: number, flags: ImportFlags): Columns {
  const sheet = flags.sheet === undefined ? {} : { sheet: flags.sheet };
  const found = catalogue.call('reports.look', { channelId, file, ...sheet }).columns;
  const said = saidColumns(flags.columns, REPORT_FIELDS);
  return found.map((column) => {
    const own = said.get(column.header.toLowerCase());
    const field = REPORT_FIELDS.find(({ key }) => key === (own ? own.field : column.field));
    const left: Partial<Record<string, Reading | undefined>> = {
      date: flags.dates ?? (own ? 'ymd' : undefined),
      amount: flags.decimals ?? (own ? 'point' : undefined),
    };
    return {
      index: column.index,
      field: field?.key ?? null,
      detail: own ? own.detail : column.detail,
      reading: column.reading ?? left[field?.kind ?? ''] ?? null,
    };
  });
}

function print(io: Io, { differences, differencesTotal, closesTotal, problems }: ReportPreview): void {
  io.out(`Differences: ${differencesTotal}; told before and no longer found: ${closesTotal}.`);
  for (const { isNew, kind, sentence } of differences.slice(0, NAMED))
    io.out(`${isNew ? 'new' : 'told before'}, ${kind}: ${sentence}`);
  if (differencesTotal > NAMED) io.out(`and ${differencesTotal - NAMED} more`);
  const rows = problems
    .slice(0, NAMED)
    .map(({ row, header, text, message }) => [`${row}`, header, text, message]);
  if (rows.length > 0) io.out(table(['Row', 'Column', 'Cell', 'Why it cannot be read'], rows));
}

/**
 * Sets a channel's own report against the record and keeps it. Ends with 1 when rows cannot be read and the good ones
 * alone were not asked for; nothing is kept then.
 */
export function importReport(catalogue: Catalogue, file: string, flags: ImportFlags, io: Io): number {
  const channelId = channelOf(catalogue, flags.channel);
  const input = {
    channelId,
    file,
    columns: columnsOf(catalogue, file, channelId, flags),
    complete: !flags.partial,
    ...(flags.sheet === undefined ? {} : { sheet: flags.sheet }),
    ...(flags.on === undefined ? {} : { on: flags.on }),
  };
  const preview = catalogue.call('reports.preview', input);
  const half = preview.unread > 0 && !flags['good-rows-only'];
  if (!half && !flags['dry-run'])
    catalogue.call('reports.reconcile', { ...input, goodRowsOnly: flags['good-rows-only'] });
  if (flags.json) printJson(io, preview);
  else print(io, preview);
  if (!half) return 0;
  io.err('Nothing was kept: mend the rows, or leave them out with --good-rows-only.');
  return 1;
}
