import type { ReadDb, WriteDb } from './connection.ts';

/** An accepted finding as stored. */
export interface Acceptance {
  id: number;
  fingerprint: string;
  reason: string;
  acceptedOn: string;
  reviewOn: string;
  reopenedOn: string | null;
}

const COLUMNS = `id, fingerprint, reason, accepted_on AS acceptedOn, review_on AS reviewOn, reopened_on AS reopenedOn`;

/** The acceptances that hold on a day (YYYY-MM-DD): given by then, not taken back by then, before their review. */
export function acceptancesOn(db: ReadDb, day: string): Acceptance[] {
  return db.all<Acceptance>(
    `SELECT ${COLUMNS} FROM acceptance
     WHERE accepted_on <= ?1 AND review_on > ?1 AND (reopened_on IS NULL OR reopened_on > ?1) ORDER BY id`,
    day,
  );
}

export function acceptanceById(db: ReadDb, id: number): Acceptance | undefined {
  return db.one<Acceptance>(`SELECT ${COLUMNS} FROM acceptance WHERE id = ?`, id);
}

export interface NewAcceptance {
  fingerprint: string;
  rule: string;
  message: string;
  workId: number | null;
  reason: string;
  acceptedOn: string;
  reviewOn: string;
}

/** Keeps an acceptance in place of an earlier one of the same finding; gives its id. */
export function insertAcceptance(db: WriteDb, given: NewAcceptance): number {
  db.run(
    'UPDATE acceptance SET reopened_on = ? WHERE fingerprint = ? AND reopened_on IS NULL',
    given.acceptedOn,
    given.fingerprint,
  );
  return db.run(
    `INSERT INTO acceptance (fingerprint, rule, message, work_id, reason, accepted_on, review_on)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    given.fingerprint,
    given.rule,
    given.message,
    given.workId,
    given.reason,
    given.acceptedOn,
    given.reviewOn,
  ).lastInsertRowid;
}

export function reopenAcceptance(db: WriteDb, id: number, on: string): void {
  db.run('UPDATE acceptance SET reopened_on = ? WHERE id = ?', on, id);
}
