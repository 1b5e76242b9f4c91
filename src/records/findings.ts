import type { AcceptedFinding, Finding } from '../contract/audit.ts';
import { Board, type Touched } from '../rules/audit/board.ts';
import type { Facts } from '../rules/audit/facts.ts';
import { gatherFacts } from '../rules/audit/gather.ts';
import type { Acceptance } from '../store/acceptances.ts';
import { readAuditBase, readAuditRows, readLooseNumbers, readLooseTasks } from '../store/audit.ts';
import type { ReadDb } from '../store/connection.ts';
import { readSettings } from '../store/settings.ts';
import { listingsThatDiffer } from './sheets.ts';

/**
 * Runs every rule over the catalogue as a connection shows it. The settings (the days a removal may take, the imprint,
 * the currency) are those of `current`, the file as it is now. `step` hears of the works as they are judged.
 */
export function judgeWhole(
  db: ReadDb,
  current: ReadDb,
  days: { day: string; today: string },
  step?: (done: number, total: number) => void,
): Board {
  const rows = { ...readAuditBase(db), ...readAuditRows(db, days.day) };
  const differences = listingsThatDiffer(db, days.day);
  return new Board(gatherFacts({ ...rows, differences }, days, readSettings(current)), step);
}

/** What is recorded now of some works, and of numbers and tasks of none, with the same shared records as `base` has. */
export function factsOf(db: ReadDb, base: Facts, { works, numbers, tasks }: Touched): Facts {
  const { day } = base;
  const rows = readAuditRows(db, day, works);
  return gatherFacts(
    {
      // The same blocks, channels and cards as everywhere else, since the rules tell them apart by themselves.
      ...base,
      ...rows,
      differences: listingsThatDiffer(db, day, works),
      numbers: [...rows.numbers, ...readLooseNumbers(db, numbers)],
      tasks: [...rows.tasks, ...readLooseTasks(db, day, tasks)],
    },
    { day, today: day },
    base.settings,
  );
}

/** A board of today that holds no work yet. */
export function emptyBoard(db: ReadDb, day: string): Board {
  const rows = { ...readAuditBase(db), ...readAuditRows(db, day, []), differences: [] };
  return new Board(gatherFacts(rows, { day, today: day }, readSettings(db)));
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

/** How many findings are open by their gravity, and how many accepted; goes through the acceptances alone. */
export function countOpen(
  board: Board,
  acceptances: readonly Acceptance[],
): Board['counts'] & { accepted: number } {
  const counts = { ...board.counts, accepted: 0 };
  for (const fingerprint of new Set(acceptances.map((acceptance) => acceptance.fingerprint))) {
    const known = board.found(fingerprint);
    if (!known) continue;
    counts[known.finding.severity] -= known.times;
    counts.accepted += known.times;
  }
  return counts;
}
