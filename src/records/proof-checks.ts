import { createHash } from 'node:crypto';
import type { CheckSummary, KeptLine, Pictured } from '../contract/proof-checks/checks.ts';
import { box, CHECK_STATES, type FileFacts, fileFacts } from '../contract/proof-checks/facts.ts';
import { Refusal } from '../contract/refusal.ts';
import { shownSize } from '../rules/proof-check/shown.ts';
import type { ReadDb } from '../store/connection.ts';
import {
  checkById,
  factsOfCheck,
  linesOfCheck,
  pictureSizes,
  type StoredCheck,
  type StoredLine,
} from '../store/proof-checks.ts';

/** SHA-256 in hexadecimal. */
export const sha256Of = (bytes: string | Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex');

function againstFinal({ finalId, finalSha256, sha256 }: StoredCheck): CheckSummary['final'] {
  if (finalId === null) return 'none';
  if (finalSha256 === null) return 'unknown';
  return finalSha256 === sha256 ? 'same' : 'other';
}

/** A check as the contract tells it. */
export function summaryOf(stored: StoredCheck): CheckSummary {
  const { id, formatId, kind, fileName, bytes, sha256, checkedOn, ruleSet, open } = stored;
  const counted = JSON.parse(stored.counts) as Record<string, number>;
  const counts = Object.fromEntries(CHECK_STATES.map((state) => [state, counted[state] ?? 0]));
  return {
    id,
    formatId,
    kind,
    fileName,
    bytes,
    sha256,
    checkedOn,
    ruleSet,
    counts: counts as CheckSummary['counts'],
    open,
    inForce: stored.inForce === 1,
    final: againstFinal(stored),
  };
}

/** One stored check; throws NOT_FOUND. */
export function needCheck(db: ReadDb, id: number, field = 'checkId'): StoredCheck {
  const stored = checkById(db, id);
  if (!stored) throw new Refusal('NOT_FOUND', `There is no check ${id} of a file.`, field);
  return stored;
}

function lineOf(line: StoredLine): KeptLine {
  const { id, rule, label, state, expected, found, advice, page, reason, givenOn, earlierReason } = line;
  return {
    id,
    check: rule,
    label,
    state,
    expected,
    found,
    advice,
    page,
    box: line.box === null ? null : box.parse(JSON.parse(line.box)),
    reason: reason === null || givenOn === null ? null : { text: reason, on: givenOn },
    earlierReason,
  };
}

/** The lines of a check as the contract tells them. */
export const keptLines = (db: ReadDb, checkId: number): KeptLine[] => linesOfCheck(db, checkId).map(lineOf);

/** What was read from the file of a check, and whether it is as it was kept. */
export function keptFacts(db: ReadDb, stored: StoredCheck): { facts: FileFacts; intact: boolean } {
  const json = factsOfCheck(db, stored.id);
  const parsed = fileFacts.safeParse(json === undefined ? undefined : JSON.parse(json));
  if (json === undefined || !parsed.success)
    throw new Refusal(
      'CATALOGUE_DAMAGED',
      `What was read from ${stored.fileName} is not there; restore a backup.`,
    );
  return { facts: parsed.data, intact: sha256Of(json) === stored.factsSha256 };
}

/** The pages of which pictures are kept, with their sizes as shown. */
export function picturedPages(db: ReadDb, checkId: number, facts: FileFacts): Pictured[] {
  return pictureSizes(db, checkId).map((picture) => ({ ...picture, ...shownSize(facts, picture) }));
}
