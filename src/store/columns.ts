import type { ReadDb, WriteDb } from './connection.ts';

/** What a column was matched with, by the key of its header. */
export interface StoredColumn {
  header: string;
  field: string;
  detail: string;
  reading: 'ymd' | 'dmy' | 'mdy' | 'point' | 'comma' | null;
}

/** The remembered columns of sheets of formats, or of the reports of one channel. */
export function rememberedColumns(db: ReadDb, channelId: number | null): StoredColumn[] {
  return channelId === null
    ? db.all<StoredColumn>('SELECT header, field, of_what AS detail, reading FROM sheet_column')
    : db.all<StoredColumn>(
        'SELECT header, field, of_what AS detail, reading FROM report_column WHERE channel_id = ?',
        channelId,
      );
}

/** Remembers columns; what is remembered already and unchanged writes nothing. */
export function rememberColumns(db: WriteDb, channelId: number | null, columns: StoredColumn[]): void {
  const known = new Map(rememberedColumns(db, channelId).map((column) => [column.header, column]));
  for (const { header, field, detail, reading } of columns) {
    const before = known.get(header);
    if (before && before.field === field && before.detail === detail && before.reading === reading) continue;
    known.set(header, { header, field, detail, reading });
    const values = [field, detail, reading, header];
    if (channelId === null)
      db.run(
        before
          ? 'UPDATE sheet_column SET field = ?, of_what = ?, reading = ? WHERE header = ?'
          : 'INSERT INTO sheet_column (field, of_what, reading, header) VALUES (?, ?, ?, ?)',
        ...values,
      );
    else
      db.run(
        before
          ? 'UPDATE report_column SET field = ?, of_what = ?, reading = ? WHERE header = ? AND channel_id = ?'
          : 'INSERT INTO report_column (field, of_what, reading, header, channel_id) VALUES (?, ?, ?, ?, ?)',
        ...values,
        channelId,
      );
  }
}

/** Forgets the columns of a channel's reports. */
export function forgetColumns(db: WriteDb, channelId: number): void {
  db.run('DELETE FROM report_column WHERE channel_id = ?', channelId);
}
