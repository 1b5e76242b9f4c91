import { matchColumns } from '../exchange/sheets/match.ts';
import { openSheet } from '../exchange/sheets/open-sheet.ts';
import { rememberedColumns } from '../store/columns.ts';
import type { Queries } from './context.ts';

export const sheetQueries = {
  'sheets.look': ({ db, files, step }, { file, sheet }) => {
    step(0, null, 'reading the file');
    const table = openSheet(files.read(file), sheet, step);
    const channels = db
      .all<{ name: string }>('SELECT name FROM channel ORDER BY name')
      .map(({ name }) => name);
    const remembered = new Map(rememberedColumns(db, null).map((column) => [column.header, column]));
    const columns = matchColumns(table.header, table.body, { of: 'formats', channels, remembered });
    const { kind, sheets, body } = table;
    return { kind, sheets, sheet: table.sheet, columns, rows: body.length };
  },
} satisfies Queries<'sheets.look'>;
