import type { FormatFile } from '../contract/format-files.ts';
import type { FileKind } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { LISTED, listed } from './ids.ts';

export type StoredFile = FormatFile & { formatId: number };

interface Row extends Omit<StoredFile, 'ended'> {
  endedOn: string | null;
  endedHow: 'replaced' | 'withdrawn' | null;
  endedReason: string;
}

const COLUMNS = `id, format_id AS formatId, kind, file_name AS fileName, final_on AS finalOn, sha256, note,
  ended_on AS endedOn, ended_how AS endedHow, ended_reason AS endedReason`;

function whole({ endedOn, endedHow, endedReason, ...file }: Row): StoredFile {
  const ended =
    endedOn === null || endedHow === null ? null : { on: endedOn, how: endedHow, reason: endedReason };
  return { ...file, ended };
}

/** The files of some formats, those in force first, then the newest. */
export function filesOfFormats(db: ReadDb, formatIds: readonly number[]): StoredFile[] {
  if (formatIds.length === 0) return [];
  return db
    .all<Row>(
      `SELECT ${COLUMNS} FROM format_file WHERE format_id IN ${LISTED}
       ORDER BY format_id, ended_on IS NOT NULL, final_on DESC, id DESC`,
      listed(formatIds),
    )
    .map(whole);
}

/** One file. */
export function fileById(db: ReadDb, id: number): StoredFile | undefined {
  const row = db.one<Row>(`SELECT ${COLUMNS} FROM format_file WHERE id = ?`, id);
  return row && whole(row);
}

/** The file of a kind that is in force. */
export function fileInForce(db: ReadDb, formatId: number, kind: FileKind): StoredFile | undefined {
  return filesOfFormats(db, [formatId]).find((file) => file.kind === kind && file.ended === null);
}

/** Adds a file; the one of its kind must have ended before. Answers its id. */
export function insertFile(db: WriteDb, file: Omit<StoredFile, 'id' | 'ended'>): number {
  return db.run(
    'INSERT INTO format_file (format_id, kind, file_name, final_on, sha256, note) VALUES (?, ?, ?, ?, ?, ?)',
    file.formatId,
    file.kind,
    file.fileName,
    file.finalOn,
    file.sha256,
    file.note,
  ).lastInsertRowid;
}

/** Ends a file: it is kept, no longer in force. */
export function endFile(db: WriteDb, id: number, ended: NonNullable<FormatFile['ended']>): void {
  db.run(
    'UPDATE format_file SET ended_on = ?, ended_how = ?, ended_reason = ? WHERE id = ?',
    ended.on,
    ended.how,
    ended.reason,
    id,
  );
}

/** Removes the files in force of a format that is removed itself. */
export function deleteFiles(db: WriteDb, formatId: number): void {
  db.run('DELETE FROM format_file WHERE format_id = ? AND ended_on IS NULL', formatId);
}
