import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { KeptAudit } from '../../src/records/kept-audit.ts';
import { wrap } from '../../src/store/connection.ts';
import { dayAfter } from '../faults/moves/plans.ts';
import { worldReader } from '../faults/world.ts';
import { openTestCatalogue } from '../support/catalogue.ts';
import { KINDS, moveOf } from '../support/history.ts';

const FIRST_DAY = '2026-03-02';
const step = fc.record({
  kind: fc.constantFrom(...KINDS),
  wrong: fc.constant(false),
  dice: fc.array(fc.nat(1_000_003), { minLength: 5, maxLength: 5 }),
});

describe('the audit that is kept', () => {
  it('says after any history of commands what a run over everything says', () => {
    let compared = 0;
    let found = 0;
    const history = fc.array(step, { minLength: 40, maxLength: 60, size: 'max' });
    const property = fc.property(history, fc.boolean(), (steps, withDemo) => {
      const catalogue = openTestCatalogue(FIRST_DAY);
      const raw = new Database(catalogue.file, { readonly: true });
      try {
        if (withDemo) catalogue.call('catalogue.demo', {});
        else catalogue.call('blocks.add', { prefix: '979-8-969999' });
        catalogue.call('channels.create', { name: 'Lamplight Books' });
        catalogue.call('settings.update', { imprint: 'Halyard' });
        const db = wrap(raw);
        const read = worldReader(raw);
        const kept = new KeptAudit(db);
        let today = FIRST_DAY;
        for (const next of steps) {
          if ((next.dice[1] ?? 0) % 40 === 0) {
            today = dayAfter(today, 1 + ((next.dice[2] ?? 0) % 9));
            catalogue.setToday(today);
          }
          const move = moveOf(next, read(), today);
          if (move) catalogue.app.call(move.name, move.input);
          const { findings, facts } = kept.on(today, today, db);
          const whole = new KeptAudit(db).on(today, today, db);
          expect(findings).toEqual(whole.findings);
          expect(facts.formats.map(({ id }) => id)).toEqual(whole.facts.formats.map(({ id }) => id));
          compared += 1;
          found += findings.length;
        }
      } finally {
        raw.close();
        catalogue.close();
      }
    });
    fc.assert(property, { seed: 25, numRuns: 6, endOnFailure: true });
    expect(compared).toBeGreaterThan(200);
    expect(found).toBeGreaterThan(compared);
  });
});

describe('what works share', () => {
  /** A demo catalogue, and the audit that is kept of it. */
  function opened() {
    const catalogue = openTestCatalogue('2026-11-25');
    catalogue.call('catalogue.demo', {});
    const raw = new Database(catalogue.file, { readonly: true });
    const db = wrap(raw);
    const kept = new KeptAudit(db);
    const close = () => {
      raw.close();
      catalogue.close();
    };
    const board = () => kept.on('2026-11-25', '2026-11-25', db);
    const anew = () => new KeptAudit(db).on('2026-11-25', '2026-11-25', db);
    return { ...catalogue, close, board, anew };
  }

  test('is judged anew by the works listed on a channel that changed, and says what a run over everything says', () => {
    const { call, board, anew, close } = opened();
    const before = board();
    const { channels } = call('channels.list', {});
    expect(channels.length).toBeGreaterThan(2);
    let found = 0;
    for (const { id } of channels) {
      call('channels.update', { id, subjectLimit: 1, kind: 'print' });
      expect(board().findings).toEqual(anew().findings);
      found = Math.max(found, board().findings.length);
      call('channels.update', { id, subjectLimit: null, kind: 'any' });
      expect(board().findings).toEqual(anew().findings);
    }
    expect(found).toBeGreaterThan(0);
    call('channels.create', { name: 'Lamplight Books' });
    expect(board().findings).toEqual(anew().findings);
    expect(board().facts.channels).toEqual(anew().facts.channels);
    expect(board()).toBe(before);
    close();
  });

  test('judges nothing anew for settings that no rule looks at, and everything for others and for blocks', () => {
    const { call, board, anew, close } = opened();
    const before = board();
    call('settings.update', { catalogueName: 'The Halyard list', lengthUnit: 'in' });
    expect(board()).toBe(before);
    expect(board().findings).toEqual(anew().findings);
    call('settings.update', { imprint: 'Fen Voices' });
    const after = board();
    expect(after).not.toBe(before);
    expect(after.findings.map(({ rule }) => rule)).toContain('imprint-differs');
    expect(after.findings).toEqual(anew().findings);
    call('blocks.add', { prefix: '979-8-88500' });
    expect(board()).not.toBe(after);
    expect(board().numbers).toEqual(anew().numbers);
    close();
  });
});

test('a run over everything tells how far it is, finds the same, and can be called off', () => {
  const catalogue = openTestCatalogue('2026-11-25');
  catalogue.call('catalogue.demo', {});
  const heard: string[] = [];
  const follower = {
    progress: ({ done, total, what }: { done: number; total: number | null; what: string }) =>
      heard.push(`${done} of ${total} ${what}`),
    cancelled: () => false,
  };
  const answer = catalogue.app.call('audit.again', { job: 'audit-again-1' }, follower);
  expect(answer).toMatchObject({ ok: true, value: { works: 4, differences: 0 } });
  expect(heard.at(-1)).toBe('4 of 4 works judged');
  const stopped = catalogue.app.call(
    'audit.again',
    { job: 'audit-again-2' },
    { ...follower, cancelled: () => true },
  );
  expect(stopped).toMatchObject({ ok: false, error: { code: 'CANCELLED' } });
  catalogue.close();
});
