import type { ProofRound } from '../contract/proofs.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** The proof rounds of the listings of an edition up to a day, as they were recorded. */
export function roundsOfEdition(db: ReadDb, editionId: number, day: string): ProofRound[] {
  return db.all<ProofRound>(
    `SELECT r.id, r.listing_id AS listingId, r.on_date AS "on", r.proof, r.outcome, r.note
     FROM format f JOIN listing l ON l.format_id = f.id JOIN proof_round r ON r.listing_id = l.id
     WHERE f.edition_id = ? AND r.on_date <= ? ORDER BY r.id`,
    editionId,
    day,
  );
}

/** Records a round, after the steps it brought about; answers its id. */
export function insertRound(db: WriteDb, round: Omit<ProofRound, 'id'>): number {
  return db.run(
    'INSERT INTO proof_round (listing_id, on_date, proof, outcome, note) VALUES (?, ?, ?, ?, ?)',
    round.listingId,
    round.on,
    round.proof,
    round.outcome,
    round.note,
  ).lastInsertRowid;
}
