import type { EditionAdvice } from '../contract/edition-advice.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { LISTED, listed } from './ids.ts';

type Line = EditionAdvice['formats'][number]['lines'][number];

/** One line as it is kept: the rule's own words of that day stay, whatever later versions say. */
export interface KeptLine extends Pick<Line, 'detail' | 'told' | 'verdict' | 'rule' | 'source'> {
  formatName: string;
  change: string;
}

export interface KeptAdvice {
  id: number;
  madeOn: string;
  verdict: EditionAdvice['overall'];
  note: string;
  lines: KeptLine[];
}

/** Keeps an answer with an edition, its lines in the order they were shown; answers its id. */
export function insertAdvice(
  db: WriteDb,
  editionId: number,
  { madeOn, verdict, note, lines }: Omit<KeptAdvice, 'id'>,
): number {
  const id = db.run(
    'INSERT INTO edition_advice (edition_id, made_on, verdict, note) VALUES (?, ?, ?, ?)',
    editionId,
    madeOn,
    verdict,
    note,
  ).lastInsertRowid;
  for (const [index, line] of lines.entries())
    db.run(
      `INSERT INTO edition_advice_line (advice_id, position, format_name, change, detail, told, verdict, rule, source)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      id,
      index + 1,
      line.formatName,
      line.change,
      line.detail,
      line.told,
      line.verdict,
      line.rule,
      line.source,
    );
  return id;
}

/** The answers kept with an edition up to a day, newest first. */
export function adviceKeptWith(db: ReadDb, editionId: number, until: string): KeptAdvice[] {
  const kept = db.all<Omit<KeptAdvice, 'lines'>>(
    `SELECT id, made_on AS madeOn, verdict, note FROM edition_advice
     WHERE edition_id = ? AND made_on <= ? ORDER BY id DESC`,
    editionId,
    until,
  );
  if (kept.length === 0) return [];
  const lines = db.all<KeptLine & { adviceId: number }>(
    `SELECT advice_id AS adviceId, format_name AS formatName, change, detail, told, verdict, rule, source
     FROM edition_advice_line WHERE advice_id IN ${LISTED} ORDER BY advice_id, position`,
    listed(kept.map(({ id }) => id)),
  );
  return kept.map((one) => ({
    ...one,
    lines: lines.filter((line) => line.adviceId === one.id).map(({ adviceId: _, ...line }) => line),
  }));
}

/** Removes what was kept with an edition that is removed itself. */
export function deleteAdvice(db: WriteDb, editionId: number): void {
  db.run(
    'DELETE FROM edition_advice_line WHERE advice_id IN (SELECT id FROM edition_advice WHERE edition_id = ?)',
    editionId,
  );
  db.run('DELETE FROM edition_advice WHERE edition_id = ?', editionId);
}
