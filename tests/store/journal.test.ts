import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { wrap } from '../../src/store/connection.ts';
import { verifyJournal } from '../../src/store/journal.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
});
afterEach(() => catalogue.close());

const entries = (count: number) => catalogue.call('journal.list', { count }).entries;
const lastCommand = () => entries(1)[0]?.commandSeq ?? 0;

describe('the journal', () => {
  it('records what stood before and after, newest first, by work', () => {
    const knots = catalogue.call('works.list', { search: 'Knots' }).works[0];
    const editionId = knots?.formats[0]?.editionId ?? 0;
    catalogue.call('editions.update', { id: editionId, description: 'Twenty-one knots.' });
    const [newest] = catalogue.call('journal.list', { workId: knots?.id ?? 0, count: 5 }).entries;
    expect(newest).toMatchObject({
      operation: 'editions.update',
      entity: 'edition',
      action: 'changed',
      about: 'Knots for Small Hands',
      at: '2026-03-02T10:00:00.000Z',
    });
    expect(newest?.before?.description).toContain('Twenty knots');
    expect(newest?.after?.description).toBe('Twenty-one knots.');
    const all = catalogue.call('journal.list', { workId: knots?.id ?? 0, count: 1000 });
    expect(all.entries.every((entry) => entry.workId === knots?.id)).toBe(true);
    expect(all.more).toBe(false);
  });

  it('pages without gap or overlap', () => {
    const seen: number[] = [];
    for (let before: number | undefined; ; ) {
      const page = catalogue.call('journal.list', { count: 7, ...(before === undefined ? {} : { before }) });
      seen.push(...page.entries.map((entry) => entry.seq));
      if (!page.more) break;
      before = page.entries.at(-1)?.seq;
    }
    expect(seen).toEqual(Array.from({ length: seen.length }, (_, i) => seen.length - i));
  });

  it('writes nothing for a change that changes nothing', () => {
    const head = entries(1)[0]?.seq;
    catalogue.call('editions.update', { id: 2, title: 'The Salt Almanac' });
    catalogue.call('settings.update', { publisher: 'Halyard & Fen' });
    expect(entries(1)[0]?.seq).toBe(head);
  });

  it('tells the whole story: a replay gives the tables, and a row put in behind its back is named', () => {
    expect(catalogue.call('catalogue.check', {}).replay).toEqual([]);
    const raw = new Database(catalogue.file);
    raw.exec('DROP TRIGGER journal_work_changed');
    raw.exec("UPDATE work SET title = 'Forged' WHERE id = 2");
    raw.close();
    expect(catalogue.call('catalogue.check', {})).toMatchObject({ ok: false, replay: ['work 2'] });
  });
});

describe('the chain', () => {
  const verified = () => {
    const raw = new Database(catalogue.file, { readonly: true });
    const { ok, firstBroken } = verifyJournal(wrap(raw));
    raw.close();
    return { ok, firstBroken };
  };
  const forge = (sql: string) => {
    const raw = new Database(catalogue.file);
    raw.exec(
      `DROP TRIGGER journal_sealed; DROP TRIGGER journal_kept; DROP TRIGGER journal_hash_once; ${sql}`,
    );
    raw.close();
  };

  it('holds with any character in what was written', () => {
    const note = `\\ " / \b\f\n\r\t \u0001\u001f\u007f\u0080\u00e9\u2028\u2029\ufeff\uffff \u{1f4d6} </script>`;
    for (const character of note) catalogue.call('works.update', { id: 2, note: `a ${character} z` });
    catalogue.call('works.update', { id: 2, note: `${note}.` });
    expect(verified()).toEqual({ ok: true, firstBroken: null });
  });

  it.each([
    ["UPDATE journal SET after = replace(after, 'Salt', 'Malt') WHERE seq = :seq"],
    ['UPDATE journal SET operation = operation || char(0) WHERE seq = :seq'],
    ["UPDATE journal SET row_key = row_key || ' ' WHERE seq = :seq"],
    ['UPDATE journal SET work_id = 1 WHERE seq = :seq'],
    ["UPDATE journal SET at = '2026-03-02T10:00:00.001Z' WHERE seq = :seq"],
    ["UPDATE journal SET hash = replace(hash, substr(hash, 1, 1), 'g') WHERE seq = :seq"],
    ['DELETE FROM journal WHERE seq = :seq'],
    [
      'UPDATE journal SET hash = NULL, at = NULL, operation = NULL, previous_hash = NULL, command_seq = NULL WHERE seq = :seq',
    ],
  ])('breaks at the entry that was touched: %s', (sql) => {
    catalogue.call('works.update', { id: 2, note: 'Salt' });
    const seq = entries(1)[0]?.seq ?? 0;
    catalogue.call('works.update', { id: 2, note: 'Later' });
    expect(verified().ok).toBe(true);
    forge(sql.replace(':seq', String(seq)));
    expect(verified()).toEqual({ ok: false, firstBroken: seq });
  });
});

describe('undo', () => {
  it('takes the last change back as a new entry', () => {
    const before = catalogue.call('works.get', { id: 2 });
    const edition = before.editions[0];
    catalogue.call('editions.update', {
      id: edition?.id ?? 0,
      title: 'Another',
      keywords: ['other'],
      contributors: [{ role: 'A01', name: 'Ilse Quayle' }],
    });
    const head = entries(1)[0]?.seq ?? 0;
    catalogue.call('journal.undo', { commandSeq: lastCommand() });
    expect(catalogue.call('works.get', { id: 2 })).toEqual(before);
    expect(entries(1)[0]?.seq).toBeGreaterThan(head);
    expect(catalogue.call('catalogue.check', {}).ok).toBe(true);
    catalogue.call('journal.undo', { commandSeq: lastCommand() });
    expect(catalogue.call('works.get', { id: 2 }).editions[0]?.title).toBe('Another');
  });

  it('brings a removed row back and removes an added one', () => {
    const { channelId } = catalogue.call('channels.create', { name: 'Quayside Books' });
    catalogue.call('channels.remove', { id: channelId });
    catalogue.call('journal.undo', { commandSeq: lastCommand() });
    expect(catalogue.call('channels.list', {}).channels.map((row) => row.name)).toContain('Quayside Books');
    const { workId } = catalogue.call('works.create', { title: 'Untimely' });
    catalogue.call('journal.undo', { commandSeq: lastCommand() });
    expect(catalogue.refusal('works.get', { id: workId }).code).toBe('NOT_FOUND');
  });

  it('never frees an assigned number, never takes a step back, never undoes what is not the last change', () => {
    const audiobook = catalogue.call('works.list', { search: 'Fen Light' }).works[0]?.formats[0]?.id ?? 0;
    const taken = catalogue.call('numbers.assign', { formatId: audiobook });
    expect(catalogue.refusal('journal.undo', { commandSeq: lastCommand() })).toMatchObject({
      code: 'STEP_REFUSED',
    });
    expect(catalogue.call('isbns.check', { texts: [taken.isbn13] }).checks[0]?.standing).toBe('assigned');
    const { listingId } = catalogue.call('listings.create', { formatId: audiobook, channelId: 3 });
    const created = lastCommand();
    catalogue.call('listings.move', { id: listingId, to: 'sent' });
    expect(catalogue.refusal('journal.undo', { commandSeq: created }).message).toContain(
      'Only the last change',
    );
    expect(catalogue.refusal('journal.undo', { commandSeq: lastCommand() }).message).toContain(
      'cannot be undone',
    );
  });
});
