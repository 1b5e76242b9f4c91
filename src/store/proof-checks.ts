import type { FileStanding } from '../contract/format-files.ts';
import type { CheckState } from '../contract/proof-checks/facts.ts';
import type { FileKind } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';

export interface StoredCheck {
  id: number;
  formatId: number;
  kind: FileKind;
  fileName: string;
  bytes: number;
  sha256: string;
  checkedOn: string;
  ruleSet: number;
  lineCount: number;
  factsSha256: string;
  /** JSON: [{page, sha256}] */
  pictures: string;
  inForce: 0 | 1;
  /** Lines that differ and have no reason. */
  open: number;
  /** JSON: how many lines are of each state. */
  counts: string;
  /** The final file in force of its kind: its id and hash. */
  finalId: number | null;
  finalSha256: string | null;
}

const CHECK = `SELECT c.id, c.format_id AS formatId, c.kind, c.file_name AS fileName, c.bytes, c.sha256,
    c.checked_on AS checkedOn, c.rule_set AS ruleSet, c.line_count AS lineCount, c.facts_sha256 AS factsSha256,
    c.pictures, c.id IN (SELECT id FROM proof_check_in_force) AS inForce,
    (SELECT count(*) FROM proof_check_line l WHERE l.check_id = c.id AND l.state = 'differs'
      AND NOT EXISTS (SELECT 1 FROM proof_check_reason r WHERE r.line_id = l.id)) AS open,
    (SELECT json_group_object(state, n) FROM (
      SELECT l.state, count(*) AS n FROM proof_check_line l WHERE l.check_id = c.id GROUP BY l.state)) AS counts,
    f.id AS finalId, f.sha256 AS finalSha256
  FROM proof_check c
  LEFT JOIN format_file f ON f.format_id = c.format_id AND f.kind = c.kind AND f.ended_on IS NULL`;

/** The checks of a format, the newest first. */
export function checksOfFormat(db: ReadDb, formatId: number): StoredCheck[] {
  return db.all<StoredCheck>(`${CHECK} WHERE c.format_id = ? ORDER BY c.id DESC`, formatId);
}

/** One check. */
export function checkById(db: ReadDb, id: number): StoredCheck | undefined {
  return db.one<StoredCheck>(`${CHECK} WHERE c.id = ?`, id);
}

export interface NewLine {
  rule: string;
  label: string;
  state: CheckState;
  expected: string;
  found: string;
  advice: string;
  page: number | null;
  /** JSON of a box, or null. */
  box: string | null;
}

export interface StoredLine extends NewLine {
  id: number;
  checkId: number;
  position: number;
  reason: string | null;
  givenOn: string | null;
  /** The newest reason given for the same line at an earlier check of this kind of file. */
  earlierReason: string | null;
}

const LINE = `SELECT l.id, l.check_id AS checkId, l.position, l.rule, l.label, l.state, l.expected, l.found,
    l.advice, l.page, l.box, r.reason, r.given_on AS givenOn,
    (SELECT er.reason FROM proof_check ec JOIN proof_check_line el ON el.check_id = ec.id
       JOIN proof_check_reason er ON er.line_id = el.id
     WHERE ec.format_id = c.format_id AND ec.kind = c.kind AND ec.id < c.id
       AND (el.rule, el.expected, el.found) = (l.rule, l.expected, l.found)
     ORDER BY er.id DESC LIMIT 1) AS earlierReason
  FROM proof_check_line l JOIN proof_check c ON c.id = l.check_id
  LEFT JOIN proof_check_reason r ON r.line_id = l.id`;

/** The lines of a check in their order. */
export function linesOfCheck(db: ReadDb, checkId: number): StoredLine[] {
  return db.all<StoredLine>(`${LINE} WHERE l.check_id = ? ORDER BY l.position`, checkId);
}

/** One line. */
export function lineById(db: ReadDb, id: number): StoredLine | undefined {
  return db.one<StoredLine>(`${LINE} WHERE l.id = ?`, id);
}

/** What was read from the file of a check, as JSON. */
export function factsOfCheck(db: ReadDb, checkId: number): string | undefined {
  return db.one<{ facts: string }>('SELECT facts FROM proof_check_facts WHERE check_id = ?', checkId)?.facts;
}

interface PictureSize {
  page: number;
  widthPx: number;
  heightPx: number;
}

/** The pages of which pictures are kept. */
export function pictureSizes(db: ReadDb, checkId: number): PictureSize[] {
  return db.all(
    `SELECT page, width_px AS widthPx, height_px AS heightPx FROM proof_check_picture
     WHERE check_id = ? ORDER BY page`,
    checkId,
  );
}

/** Pictures of some pages as PNG. */
export function picturesOf(
  db: ReadDb,
  checkId: number,
  pages: readonly number[],
): { page: number; png: Uint8Array }[] {
  return db.all(
    `SELECT page, png FROM proof_check_picture
     WHERE check_id = ?1 AND page IN (SELECT value FROM json_each(?2)) ORDER BY page`,
    checkId,
    JSON.stringify(pages),
  );
}

export interface NewCheck {
  formatId: number;
  kind: FileKind;
  fileName: string;
  bytes: number;
  sha256: string;
  checkedOn: string;
  ruleSet: number;
  facts: { json: string; sha256: string };
  lines: readonly NewLine[];
  pictures: readonly (PictureSize & { png: Uint8Array; sha256: string })[];
}

/** Keeps a check with its lines, what was read and the pictures; answers its id. */
export function insertCheck(db: WriteDb, check: NewCheck): number {
  const told = JSON.stringify(check.pictures.map(({ page, sha256 }) => ({ page, sha256 })));
  const id = db.run(
    `INSERT INTO proof_check (format_id, kind, file_name, bytes, sha256, checked_on, rule_set, line_count,
       facts_sha256, pictures) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    check.formatId,
    check.kind,
    check.fileName,
    check.bytes,
    check.sha256,
    check.checkedOn,
    check.ruleSet,
    check.lines.length,
    check.facts.sha256,
    told,
  ).lastInsertRowid;
  db.run('INSERT INTO proof_check_facts (check_id, facts) VALUES (?, ?)', id, check.facts.json);
  for (const [index, line] of check.lines.entries())
    db.run(
      `INSERT INTO proof_check_line (check_id, position, rule, label, state, expected, found, advice, page, box)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      id,
      index + 1,
      line.rule,
      line.label,
      line.state,
      line.expected,
      line.found,
      line.advice,
      line.page,
      line.box,
    );
  for (const { page, widthPx, heightPx, png } of check.pictures)
    db.run(
      'INSERT INTO proof_check_picture (check_id, page, width_px, height_px, png) VALUES (?, ?, ?, ?, ?)',
      id,
      page,
      widthPx,
      heightPx,
      png,
    );
  return id;
}

/** Gives a line its reason. */
export function insertReason(
  db: WriteDb,
  line: Pick<StoredLine, 'id' | 'checkId'>,
  reason: string,
  on: string,
): void {
  db.run(
    'INSERT INTO proof_check_reason (line_id, check_id, reason, given_on) VALUES (?, ?, ?, ?)',
    line.id,
    line.checkId,
    reason,
    on,
  );
}

/** The checked interiors of the work to which a format belongs, the newest first. */
export function interiorsOfWork(
  db: ReadDb,
  formatId: number,
  most: number,
): { checkId: number; formatId: number; fileName: string; checkedOn: string }[] {
  return db.all(
    `SELECT c.id AS checkId, c.format_id AS formatId, c.file_name AS fileName, c.checked_on AS checkedOn
     FROM proof_check c JOIN format f ON f.id = c.format_id JOIN edition e ON e.id = f.edition_id
     WHERE c.kind = 'interior' AND e.work_id = (
       SELECT oe.work_id FROM format o JOIN edition oe ON oe.id = o.edition_id WHERE o.id = ?)
     ORDER BY c.id DESC LIMIT ?`,
    formatId,
    most,
  );
}

/** What differs in the checks in force of a format and has no reason, in the order of the checks' lines. */
export function openDifferences(
  db: ReadDb,
  formatId: number,
): { label: string; kind: FileKind; fileName: string; checkedOn: string }[] {
  return db.all(
    `SELECT o.label, o.kind, c.file_name AS fileName, c.checked_on AS checkedOn
     FROM proof_check_open o JOIN proof_check c ON c.id = o.check_id
     WHERE o.format_id = ? ORDER BY o.check_id, o.position`,
    formatId,
  );
}

/** The final files and checks of all formats. */
export function fileStandings(db: ReadDb): FileStanding[] {
  return db.all<FileStanding>(
    `SELECT k.format_id AS formatId, k.kind, f.file_name AS finalName, c.file_name AS checkedName,
       c.checked_on AS checkedOn,
       (SELECT count(*) FROM proof_check_open o WHERE o.check_id = i.id) AS open,
       (SELECT count(*) FROM proof_check_reason r WHERE r.check_id = i.id) AS reasoned,
       (SELECT count(*) FROM proof_check a WHERE a.format_id = k.format_id AND a.kind = k.kind) AS checks
     FROM (SELECT format_id, kind FROM proof_check
       UNION SELECT format_id, kind FROM format_file WHERE ended_on IS NULL) k
     LEFT JOIN format_file f ON f.format_id = k.format_id AND f.kind = k.kind AND f.ended_on IS NULL
     LEFT JOIN proof_check_in_force i ON i.format_id = k.format_id AND i.kind = k.kind
     LEFT JOIN proof_check c ON c.id = i.id
     ORDER BY k.format_id, k.kind`,
  );
}

/** The final files and checks of the formats of some works; reads those of no other, as the views would. */
export function fileStandingsOf(db: ReadDb, works: readonly number[]): FileStanding[] {
  return db.all<FileStanding>(
    `WITH own (id) AS MATERIALIZED (SELECT m.id FROM json_each(?1) w
         CROSS JOIN edition e ON e.work_id = w.value CROSS JOIN format m ON m.edition_id = e.id),
       kept (format_id, kind) AS MATERIALIZED (
         SELECT p.format_id, p.kind FROM own CROSS JOIN proof_check p ON p.format_id = own.id
         UNION SELECT f.format_id, f.kind FROM own CROSS JOIN format_file f ON f.format_id = own.id
         WHERE f.ended_on IS NULL)
     SELECT k.format_id AS formatId, k.kind, f.file_name AS finalName, c.file_name AS checkedName,
       c.checked_on AS checkedOn,
       (SELECT count(*) FROM proof_check_line l WHERE l.check_id = c.id AND l.state = 'differs'
         AND NOT EXISTS (SELECT 1 FROM proof_check_reason r WHERE r.line_id = l.id)) AS open,
       (SELECT count(*) FROM proof_check_line l JOIN proof_check_reason r ON r.line_id = l.id
         WHERE l.check_id = c.id) AS reasoned,
       (SELECT count(*) FROM proof_check a WHERE a.format_id = k.format_id AND a.kind = k.kind) AS checks
     FROM kept k
     LEFT JOIN format_file f ON f.format_id = k.format_id AND f.kind = k.kind AND f.ended_on IS NULL
     LEFT JOIN proof_check c ON c.id = (SELECT max(n.id) FROM proof_check n
       WHERE n.format_id = k.format_id AND n.kind = k.kind AND (f.sha256 IS NULL OR f.sha256 = n.sha256))
     ORDER BY k.format_id, k.kind`,
    JSON.stringify(works),
  );
}

/** Whether a file of the format was ever checked. */
export function wasChecked(db: ReadDb, formatId: number): boolean {
  return db.one('SELECT 1 FROM proof_check WHERE format_id = ? LIMIT 1', formatId) !== undefined;
}

/** Numbers of the catalogue among some, with the format that each is or was given to. */
export function carriersOf(
  db: ReadDb,
  isbns: readonly string[],
): { isbn13: string; formatId: number | null; spent: 0 | 1 }[] {
  return db.all(
    `SELECT isbn13, format_id AS formatId, spent_on IS NOT NULL AS spent FROM number
     WHERE isbn13 IN (SELECT value FROM json_each(?)) ORDER BY isbn13`,
    JSON.stringify(isbns),
  );
}
