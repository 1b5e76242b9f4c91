import { EXPORT_KINDS, type ExportKind } from '../contract/exports.ts';
import type { ParsedInputOf } from '../contract/index.ts';
import { Refusal } from '../contract/refusal.ts';
import { AGENCY_COLUMNS } from '../exchange/sheets/agency-out.ts';
import { CSV_MARK, csvLine } from '../exchange/sheets/csv-out.ts';
import { type OutCell, type OutRow, type OutScope, sheetColumns } from '../exchange/sheets/sheet-out.ts';
import { MOST_IN_CELL, writeXlsx } from '../exchange/sheets/xlsx-out.ts';
import { type WalkedFormat, walkFormats } from '../records/walk.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { writeChanges } from '../store/changes.ts';
import type { ReadDb } from '../store/connection.ts';
import { isDemo, readSettings } from '../store/settings.ts';
import type { Sink } from '../store/staging.ts';
import { writeWhole } from '../store/whole.ts';
import type { LongQueryContext, Queries } from './context.ts';
import { writeOnix } from './onix-export.ts';

type ExportInput = ParsedInputOf<'exports.make'>;

/** Writes one kind of file. */
interface Maker {
  /** Media type. */
  type: string;
  /** Writes the file; answers how many records it holds and what the user should know. */
  write(context: LongQueryContext, input: ExportInput, sink: Sink): { records: number; notes: string[] };
}

const DEMO_NOTE = 'Demo catalogue: its numbers are invented and must never be printed.';

const outRow = (walked: WalkedFormat): OutRow => ({ ...walked, isbn: shownIsbn(walked.format.isbn13) });

/** Currencies and channels that the formats of the catalogue, or of one work, have. */
function scopeOf(db: ReadDb, workId: number | undefined): OutScope {
  const ofWork = 'FROM format f JOIN edition e ON e.id = f.edition_id AND (?1 IS NULL OR e.work_id = ?1)';
  const key = workId ?? null;
  const currencies = (tax: string) =>
    db
      .all<{ currency: string }>(
        `SELECT DISTINCT p.currency ${ofWork} JOIN format_price p ON p.format_id = f.id AND p.tax = ?2 ORDER BY 1`,
        key,
        tax,
      )
      .map((row) => row.currency);
  const channels = db.all<{ name: string }>(
    `SELECT DISTINCT c.name ${ofWork} JOIN listing l ON l.format_id = f.id JOIN channel c ON c.id = l.channel_id ORDER BY 1`,
    key,
  );
  return {
    including: currencies('including'),
    excluding: currencies('excluding'),
    channels: channels.map((row) => row.name),
  };
}

function* sheetRows(context: LongQueryContext, { workId }: ExportInput, scope: OutScope) {
  const columns = sheetColumns(scope);
  for (const walked of walkFormats(context.db, { workId, step: context.step, what: 'works written' })) {
    const row = outRow(walked);
    yield columns.map((column): OutCell => column.cell(row));
  }
}

const csv: Maker = {
  type: 'text/csv',
  write: (context, input, sink) => {
    const scope = scopeOf(context.db, input.workId);
    const header = sheetColumns(scope).map((column): OutCell => ({ as: 'text', value: column.header }));
    sink.write(CSV_MARK + csvLine(header));
    let records = 0;
    for (const row of sheetRows(context, input, scope)) {
      sink.write(csvLine(row));
      records += 1;
    }
    return { records, notes: [] };
  },
};

const xlsx: Maker = {
  type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  write: (context, input, sink) => {
    const scope = scopeOf(context.db, input.workId);
    const header = sheetColumns(scope).map((column) => column.header);
    let records = 0;
    const counted = function* () {
      for (const row of sheetRows(context, input, scope)) {
        records += 1;
        yield row;
      }
    };
    const long = writeXlsx('Formats', header, counted(), (bytes) => sink.write(bytes));
    if (long)
      throw new Refusal(
        'BAD_INPUT',
        `Row ${long.row}, ${long.header}: a cell of a workbook holds ${MOST_IN_CELL.toLocaleString('en')} characters at most, and this text has ${long.length.toLocaleString('en')}. Export as CSV, which has no such limit, or shorten the text; nothing was written.`,
      );
    return { records, notes: [] };
  },
};

/** Every number that a format carries and that is not spent; what was cancelled is not registered. */
const agency: Maker = {
  type: 'text/csv',
  write: ({ db, step }, { workId }, sink) => {
    const { publisher, countryOfPublication: country } = readSettings(db);
    sink.write(
      CSV_MARK + csvLine(AGENCY_COLUMNS.map(({ header }): OutCell => ({ as: 'text', value: header }))),
    );
    const walked = walkFormats(db, { workId, step, what: 'works written' });
    let records = 0;
    for (const [, formats] of byEdition(walked)) {
      const numbers = formats.flatMap(({ format }) => shownIsbn(format.isbn13) ?? []);
      for (const one of formats) {
        const row = outRow(one);
        const alsoAs = numbers.filter((number) => number !== row.isbn);
        sink.write(csvLine(AGENCY_COLUMNS.map(({ cell }) => cell({ ...row, publisher, country, alsoAs }))));
        records += 1;
      }
    }
    return {
      records,
      notes: [
        'Usage constraints, and the number of the whole that a part belongs to, are not recorded here; fill them in before you send the sheet.',
        'Agencies ask for these facts in forms of their own; what yours asks for goes before this sheet.',
        ...(country === ''
          ? ['No country of publication is named in Settings, so that column is empty.']
          : []),
        ...(publisher === '' ? ['No publisher is named in Settings, so that column is empty.'] : []),
      ],
    };
  },
};

/** Formats with a number, gathered by edition; they come edition by edition. */
function* byEdition(walked: Iterable<WalkedFormat>): Generator<[number, WalkedFormat[]]> {
  let open: [number, WalkedFormat[]] | undefined;
  for (const one of walked) {
    if (one.format.isbn13 === null || one.format.standing === 'cancelled') continue;
    if (open?.[0] !== one.edition.id) {
      if (open) yield open;
      open = [one.edition.id, []];
    }
    open[1].push(one);
  }
  if (open) yield open;
}

const onixMaker = (content: 'full' | 'registration'): Maker => ({
  type: 'application/xml',
  write: (context, { workId, onix }, sink) => writeOnix(context, { workId, onix, content }, sink),
});

const json: Maker = {
  type: 'application/json',
  write: ({ db, file, step }, { workId }, sink) => {
    if (workId !== undefined)
      throw new Refusal(
        'BAD_INPUT',
        'The JSON file holds the whole catalogue; leave the work out.',
        'workId',
      );
    const records = writeWhole(db, file.schemaVersion, (piece) => sink.write(piece), step);
    return { records, notes: ['The journal stays with this catalogue; to keep it too, make a backup.'] };
  },
};

const changes: Maker = {
  type: 'application/json',
  write: ({ db, file, step }, { workId }, sink) => {
    const form = file.schemaVersion;
    const records = writeChanges(db, { form, workId }, (piece) => sink.write(piece), step);
    return {
      records,
      notes: [
        'Open the list that this one was copied from, and import this file there: what both have changed is shown first.',
      ],
    };
  },
};

const MAKERS: Record<ExportKind, Maker> = {
  csv,
  xlsx,
  'agency-csv': agency,
  json,
  changes,
  onix: onixMaker('full'),
  'agency-onix': onixMaker('registration'),
};

/** 'my-press-2026-11-25.csv' */
function fileNameOf(db: ReadDb, today: string, ending: string): string {
  const plain = readSettings(db)
    .catalogueName.normalize('NFKD')
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase();
  return `${plain.slice(0, 80) || 'catalogue'}-${today}${ending}`;
}

export const exportQueries = {
  'exports.make': (context, input) => {
    const { db, files, today } = context;
    if (input.workId !== undefined && !db.one('SELECT 1 FROM work WHERE id = ?', input.workId))
      throw new Refusal('NOT_FOUND', `There is no work ${input.workId}.`, 'workId');
    const ending = EXPORT_KINDS.find(({ kind }) => kind === input.as)?.ending ?? '';
    const name = fileNameOf(db, today, ending);
    const maker = MAKERS[input.as];
    let told = { records: 0, notes: [] as string[] };
    const made = files.make(name, (sink) => {
      told = maker.write(context, input, sink);
    });
    return {
      ...made,
      name,
      type: maker.type,
      ...told,
      notes: [...(isDemo(db) ? [DEMO_NOTE] : []), ...told.notes],
    };
  },
} satisfies Queries<'exports.make'>;
