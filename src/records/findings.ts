import type { AcceptedFinding, Finding } from '../contract/audit.ts';
import type { Facts } from '../rules/audit/facts.ts';
import { gatherFacts } from '../rules/audit/gather.ts';
import { audit } from '../rules/audit/index.ts';
import type { Acceptance } from '../store/acceptances.ts';
import { readAuditRows } from '../store/audit.ts';
import type { ReadDb } from '../store/connection.ts';
import { readSettings } from '../store/settings.ts';
import { listingsThatDiffer } from './sheets.ts';

/** A catalogue on one day, and all that the rules find in it. */
export interface Judged {
  facts: Facts;
  findings: Finding[];
}

/**
 * Runs every rule over the catalogue as a connection shows it. The settings (the days a removal may take, the imprint,
 * the currency) are those of `current`, the file as it is now.
 */
export function judgeWhole(db: ReadDb, current: ReadDb, days: { day: string; today: string }): Judged {
  const rows = { ...readAuditRows(db, days.day), differences: listingsThatDiffer(db, days.day) };
  const facts = gatherFacts(rows, days, readSettings(current));
  return { facts, findings: audit(facts) };
}

/** The findings that are open, and those that somebody accepted. */
export function withAcceptances(
  findings: readonly Finding[],
  acceptances: readonly Acceptance[],
): { findings: Finding[]; accepted: AcceptedFinding[] } {
  const known = new Map(acceptances.map((acceptance) => [acceptance.fingerprint, acceptance]));
  const open: Finding[] = [];
  const accepted: AcceptedFinding[] = [];
  for (const finding of findings) {
    const given = known.get(finding.fingerprint);
    if (!given) open.push(finding);
    else {
      const { id, reason, acceptedOn, reviewOn } = given;
      accepted.push({ ...finding, accepted: { id, reason, on: acceptedOn, reviewOn } });
    }
  }
  return { findings: open, accepted };
}
