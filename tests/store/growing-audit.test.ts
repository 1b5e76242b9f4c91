import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type App, openApp } from '../../src/app.ts';
import { KeptAudit } from '../../src/records/kept-audit.ts';
import { wrap } from '../../src/store/connection.ts';
import { worldReader } from '../faults/world.ts';
import { grownCopy, LAST_DAY } from '../support/generator/index.ts';
import { KINDS, moveOf } from '../support/history.ts';

// The audit that is worked out part by part between other calls.

let folder: string;
let app: App;
let raw: Database.Database;
let today: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  today = LAST_DAY;
  const file = grownCopy({ formats: 900 }, folder);
  app = openApp({ file, today: () => today, now: () => new Date(`${today}T10:00:00.000Z`) });
  raw = new Database(file, { readonly: true });
});
afterEach(() => {
  raw.close();
  app.close();
  rmSync(folder, { recursive: true });
});

const value = <T>(name: string, input: object): T => {
  const answer = app.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
  return answer.value as T;
};
const progress = () => value<{ counts: object | null; done: number; total: number }>('audit.progress', {});

describe('an audit that grows', () => {
  it('finds what a run over everything finds, whatever is entered between its parts', () => {
    const db = wrap(raw);
    const read = worldReader(raw);
    let parts = 0;
    let moved = 0;
    for (let round = 1; round <= 4; round += 1) {
      const kept = new KeptAudit(db);
      for (let at = 0; !kept.advance(today); at += 1) {
        parts += 1;
        const dice = [7, 11, 13, 17, 19].map((prime) => prime * (round * 31 + at));
        const kind = KINDS[(round * 5 + at) % KINDS.length];
        const move = kind && moveOf({ kind, wrong: false, dice }, read(), today);
        if (move && app.call(move.name, move.input).ok) moved += 1;
        // A channel is what many works share: its change while the audit grows must not be lost either.
        if (at === 1) value('channels.update', { id: 1, notes: `Asked again, ${round}` });
      }
      const board = kept.on(today, today, db);
      const whole = new KeptAudit(db).on(today, today, db);
      expect(board.findings).toEqual(whole.findings);
      expect(board.counts).toEqual(whole.counts);
      expect(board.numbers).toEqual(whole.numbers);
    }
    expect(parts).toBeGreaterThanOrEqual(12);
    expect(moved).toBeGreaterThan(4);
  });

  it('tells how far it has come, and the count only when it is at hand', () => {
    expect(progress()).toMatchObject({ counts: null, done: 0 });
    expect(app.advance()).toBe(false);
    const { counts, done, total } = progress();
    expect([counts, done]).toEqual([null, 100]);
    expect(total).toBe(value<{ total: number }>('works.list', {}).total);
    while (!app.advance());
    expect(progress().counts).toEqual(value('audit.count', {}));
    value('works.create', { title: 'One work more' });
    expect(progress().counts).not.toBeNull();
  });

  it('begins anew on another day, and after a change of everything', () => {
    while (!app.advance());
    today = '2026-11-26';
    expect(progress().counts).toBeNull();
    while (!app.advance());
    expect(progress().counts).toEqual(value('audit.count', {}));
    value('settings.update', { removalOverdueDays: 3 });
    expect(progress().counts).toBeNull();
    while (!app.advance());
    expect(progress().counts).toEqual(value('audit.count', {}));
  });
});
