import { type PlanKind, type PlanStep, planSteps } from '../contract/plan-templates.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** A saved version of the steps of a plan. */
export interface StoredSteps {
  id: number;
  kind: PlanKind;
  version: number;
  steps: PlanStep[];
  note: string;
  savedOn: string;
  /** How many plans were made from it. */
  plans: number;
}

type Row = Omit<StoredSteps, 'steps'> & { steps: string };

const SELECT = `SELECT v.id, v.kind, v.version, v.steps, v.note, v.saved_on AS savedOn,
  (SELECT count(*) FROM plan p WHERE p.template_id = v.id) AS plans FROM plan_template v`;

const read = (row: Row): StoredSteps => ({ ...row, steps: planSteps.parse(JSON.parse(row.steps)) });

/** Every saved version, the newest first. */
export function stepVersions(db: ReadDb, kind: PlanKind): StoredSteps[] {
  return db.all<Row>(`${SELECT} WHERE v.kind = ? ORDER BY v.version DESC`, kind).map(read);
}

/** The version in use; none where nothing was saved. */
export function currentSteps(db: ReadDb, kind: PlanKind): StoredSteps | undefined {
  const row = db.one<Row>(`${SELECT} WHERE v.kind = ? ORDER BY v.version DESC LIMIT 1`, kind);
  return row && read(row);
}

/** The version that a plan was made from; none for a plan made before there were versions. */
export function stepsOfPlan(db: ReadDb, planId: number): StoredSteps | undefined {
  const row = db.one<Row>(`${SELECT} WHERE v.id = (SELECT template_id FROM plan WHERE id = ?)`, planId);
  return row && read(row);
}

/** Saves the next version. */
export function insertSteps(
  db: WriteDb,
  saved: { kind: PlanKind; steps: readonly PlanStep[]; note: string; savedOn: string },
): { id: number; version: number } {
  const version = 1 + (currentSteps(db, saved.kind)?.version ?? 0);
  const { lastInsertRowid } = db.run(
    'INSERT INTO plan_template (kind, version, steps, note, saved_on) VALUES (?, ?, ?, ?, ?)',
    saved.kind,
    version,
    JSON.stringify(saved.steps),
    saved.note,
    saved.savedOn,
  );
  return { id: lastInsertRowid, version };
}
