import { TEXT_KINDS, TEXTS, type TextKind } from '../contract/text-kinds.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** A saved version of a text; version 0 is the program's own. */
export interface StoredText {
  kind: TextKind;
  version: number;
  subject: string;
  body: string;
  note: string;
  savedOn: string | null;
}

const COLUMNS = 'kind, version, subject, body, note, saved_on AS savedOn';

function ownText(kind: TextKind): StoredText {
  const { subject, body } = TEXTS[kind];
  return { kind, version: 0, subject, body, note: '', savedOn: null };
}

/** Every version of a text, the newest first and the program's own last. */
export function textVersions(db: ReadDb, kind: TextKind): StoredText[] {
  const saved = db.all<StoredText>(
    `SELECT ${COLUMNS} FROM text_template WHERE kind = ? ORDER BY version DESC`,
    kind,
  );
  return [...saved, ownText(kind)];
}

/** The text in use. */
export function currentText(db: ReadDb, kind: TextKind): StoredText {
  const newest = db.one<StoredText>(
    `SELECT ${COLUMNS} FROM text_template WHERE kind = ? ORDER BY version DESC LIMIT 1`,
    kind,
  );
  return newest ?? ownText(kind);
}

export function currentTexts(db: ReadDb): StoredText[] {
  return TEXT_KINDS.map((kind) => currentText(db, kind));
}

/** Saves the next version of a text; answers its version. */
export function insertText(db: WriteDb, text: StoredText & { savedOn: string }): number {
  const version = currentText(db, text.kind).version + 1;
  db.run(
    'INSERT INTO text_template (kind, version, subject, body, note, saved_on) VALUES (?, ?, ?, ?, ?, ?)',
    text.kind,
    version,
    text.subject,
    text.body,
    text.note,
    text.savedOn,
  );
  return version;
}
