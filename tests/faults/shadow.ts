import type Database from 'better-sqlite3';
import { Frozen } from './frozen.ts';

// What must hold whatever is tried, kept outside the file: the shadow remembers what it saw and says where the file
// has gone back on it.

interface NumberRow {
  isbn13: string;
  format_id: number | null;
  assigned_on: string | null;
  reserved_on: string | null;
  spent_on: string | null;
  spent_reason: string | null;
}

interface StepRow {
  listing: number;
  standing: string | null;
  from: string;
  to: string;
  on: string;
}

const STEPS = new Set(
  'unsent>sent sent>proof proof>cleared cleared>selling selling>leaving leaving>gone leaving>selling sent>unsent proof>unsent cleared>unsent'.split(
    ' ',
  ),
);

const EDITIONS = `SELECT e.id, json_array(e.work_id, e.number, e.statement, e.title, e.subtitle, e.language, e.imprint,
    e.series, e.series_number, (SELECT json_group_array(json_array(c.position, c.role, c.name) ORDER BY c.position)
      FROM edition_contributor c WHERE c.edition_id = e.id)) AS identity,
    (SELECT max(closed_on IS NULL) FROM correction c WHERE c.edition_id = e.id) AS correcting
  FROM edition e WHERE EXISTS (SELECT 1 FROM format f JOIN listing l ON l.format_id = f.id
    JOIN listing_step s ON s.listing_id = l.id WHERE f.edition_id = e.id AND s.to_standing = 'sent')`;

const FORMATS = `SELECT f.id, json_array(f.edition_id, f.form, f.form_detail, f.case_kind, f.large_print) AS identity,
    (SELECT json_group_array(n.isbn13 ORDER BY n.isbn13) FROM number n WHERE n.format_id = f.id
      AND (n.spent_on IS NULL OR n.spent_on IS f.cancelled_on)) AS isbns,
    (SELECT max(closed_on IS NULL) FROM correction c WHERE c.edition_id = f.edition_id) AS correcting
  FROM format f WHERE EXISTS (SELECT 1 FROM listing l JOIN listing_step s ON s.listing_id = l.id
    WHERE l.format_id = f.id AND s.to_standing = 'sent')`;

interface IdentityRow {
  id: number;
  identity: string;
  isbns?: string;
  correcting: number | null;
}

/** Watches one catalogue file through a connection of its own. */
export class Shadow {
  readonly #raw: Database.Database;
  readonly #statements = new Map<string, Database.Statement>();
  readonly #numbers = new Map<string, NumberRow>();
  readonly #identity = new Map<string, string>();
  readonly #isbns = new Map<number, string>();
  readonly #steps = new Map<number, string[]>();
  readonly #frozen: Frozen;
  #head: { seq: number; hash: string } | undefined;

  constructor(raw: Database.Database) {
    this.#raw = raw;
    this.#frozen = new Frozen(raw);
  }

  /** Looks at the file; answers what it has gone back on since, in a sentence each. */
  observe(): string[] {
    return [
      ...this.#lookAtNumbers(),
      ...this.#lookAtLocks(),
      ...this.#lookAtSteps(),
      ...this.#lookAtJournal(),
      ...this.#frozen.observe(),
    ];
  }

  #rows<T>(sql: string): T[] {
    const statement = this.#statements.get(sql) ?? this.#raw.prepare(sql);
    this.#statements.set(sql, statement);
    return statement.all() as T[];
  }

  #lookAtNumbers(): string[] {
    const faults: string[] = [];
    const rows = this.#rows<NumberRow>(
      'SELECT isbn13, format_id, assigned_on, reserved_on, spent_on, spent_reason FROM number',
    );
    const now = new Map(rows.map((row) => [row.isbn13, row]));
    if (now.size !== rows.length) faults.push('a number stands twice');
    const active = rows.filter((row) => row.format_id !== null && row.spent_on === null);
    if (new Set(active.map((row) => row.format_id)).size !== active.length)
      faults.push('a format has two numbers');
    for (const [isbn, was] of this.#numbers) {
      const is = now.get(isbn);
      if (was.spent_on !== null && JSON.stringify(is) !== JSON.stringify(was))
        faults.push(`the spent number ${isbn} was changed`);
      if (was.assigned_on !== null && (is?.format_id !== was.format_id || is.assigned_on !== was.assigned_on))
        faults.push(`the assigned number ${isbn} was freed or moved`);
    }
    for (const [isbn, row] of now) this.#numbers.set(isbn, row);
    return faults;
  }

  /** Compares identity with what was seen first, until a recorded correction opens it. */
  #compare(kind: string, rows: IdentityRow[]): string[] {
    const faults: string[] = [];
    const seen = new Set<string>();
    for (const { id, identity, correcting } of rows) {
      const key = `${kind} ${id}`;
      seen.add(key);
      const was = this.#identity.get(key);
      if (correcting === 1) this.#identity.delete(key);
      else if (was === undefined) this.#identity.set(key, identity);
      else if (was !== identity) faults.push(`${key} was changed though locked: ${was} became ${identity}`);
    }
    for (const key of this.#identity.keys())
      if (key.startsWith(`${kind} `) && !seen.has(key)) faults.push(`${key} is gone though submitted`);
    return faults;
  }

  #lookAtLocks(): string[] {
    const formats = this.#rows<IdentityRow>(FORMATS);
    const faults = [
      ...this.#compare('edition', this.#rows<IdentityRow>(EDITIONS)),
      ...this.#compare('format', formats),
    ];
    for (const { id, isbns = '' } of formats) {
      const was = this.#isbns.get(id);
      if (was !== undefined && was !== isbns) faults.push(`format ${id} had ${was} and has ${isbns}`);
      this.#isbns.set(id, isbns);
    }
    return faults;
  }

  #lookAtSteps(): string[] {
    const faults: string[] = [];
    const steps = new Map<number, string[]>();
    const rows = this.#rows<StepRow>(
      `SELECT s.listing_id AS listing, l.standing, s.from_standing AS "from", s.to_standing AS "to", s.on_date AS "on"
       FROM listing_step s LEFT JOIN listing l ON l.id = s.listing_id ORDER BY s.listing_id, s.id`,
    );
    const last = new Map<number, StepRow>();
    for (const row of rows) {
      const before = last.get(row.listing);
      if (row.from !== (before?.to ?? 'unsent') || !STEPS.has(`${row.from}>${row.to}`))
        faults.push(
          `listing ${row.listing} took a step ${row.from}>${row.to} after ${before?.to ?? 'unsent'}`,
        );
      if (before && row.on < before.on) faults.push(`listing ${row.listing} took a step back in time`);
      last.set(row.listing, row);
      steps.set(row.listing, [...(steps.get(row.listing) ?? []), `${row.from}>${row.to} ${row.on}`]);
    }
    for (const { listing, standing, to } of last.values())
      if (standing !== to) faults.push(`listing ${listing} stands at ${standing}, its last step says ${to}`);
    const stepless = this.#rows<{ id: number }>(
      "SELECT id FROM listing WHERE standing <> 'unsent' AND id NOT IN (SELECT listing_id FROM listing_step)",
    );
    for (const { id } of stepless) faults.push(`listing ${id} moved without a step`);
    for (const [listing, was] of this.#steps)
      if (was.some((step, at) => steps.get(listing)?.[at] !== step))
        faults.push(`listing ${listing} lost a step it had taken`);
    for (const [listing, taken] of steps) this.#steps.set(listing, taken);
    return faults;
  }

  #lookAtJournal(): string[] {
    const head = this.#head;
    const kept = head && this.#raw.prepare('SELECT hash FROM journal WHERE seq = ?').pluck().get(head.seq);
    const [now] = this.#rows<{ seq: number; hash: string }>(
      'SELECT seq, hash FROM journal WHERE hash IS NOT NULL ORDER BY seq DESC LIMIT 1',
    );
    this.#head = now;
    return head && kept !== head.hash ? [`the journal lost entry ${head.seq}`] : [];
  }
}
