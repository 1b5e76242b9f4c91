import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, it } from 'vitest';
import { openApp } from '../../src/app.ts';
import type { InputOf, OperationName, OutputOf } from '../../src/contract/index.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { fetched, stage } from '../support/staged.ts';

type List = Pick<TestCatalogue, 'call' | 'refusal' | 'close'>;

const open: List[] = [];
afterEach(() => {
  for (const list of open.splice(0)) list.close();
});

/** A second person's copy of a list, as a backup or a copied file is one. */
function copyOf(list: TestCatalogue): List {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-copy-'));
  const file = join(folder, 'copy.ledger');
  const raw = new Database(list.file, { readonly: true });
  raw.prepare('VACUUM INTO ?').run(file);
  raw.close();
  const app = openApp({ file, today: () => '2026-11-25', now: () => new Date('2026-11-25T12:00:00Z') });
  const copy: List = {
    call: <N extends OperationName>(name: N, input: InputOf<N>) => {
      const answer = app.call(name, input);
      if (!answer.ok) throw new Refusal(answer.error.code, answer.error.message, answer.error.field);
      return answer.value as OutputOf<N>;
    },
    refusal: (name, input) => {
      const answer = app.call(name, input);
      if (answer.ok) throw new Error(`${name} was carried out`);
      return answer.error;
    },
    close: () => {
      app.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
  open.push(copy);
  return copy;
}

function demo(): TestCatalogue {
  const list = openTestCatalogue('2026-11-25');
  open.push(list);
  list.call('catalogue.demo', {});
  return list;
}

const changes = (list: List, workId?: number) =>
  fetched(
    list,
    list.call('exports.make', workId === undefined ? { as: 'changes' } : { as: 'changes', workId }).file,
  );

const merge = (to: List, from: List, terms: Partial<InputOf<'changes.merge'>> = {}, workId?: number) =>
  to.call('changes.merge', { file: stage(to, changes(from, workId), 'copy.changes.json'), ...terms });

/** Everything a list says of its works, without keys. */
function told(list: List): unknown {
  const { works } = list.call('works.list', {});
  return works
    .map(({ title, id }) => {
      const { editions } = list.call('works.get', { id });
      return {
        title,
        editions: JSON.parse(JSON.stringify(editions, (k, v) => (/id$/i.test(k) ? undefined : v))),
      };
    })
    .sort((a, b) => a.title.localeCompare(b.title));
}

const sound = (list: List) =>
  expect(list.call('catalogue.check', {})).toMatchObject({ ok: true, replay: [], schema: [] });

describe('changes of a copy, merged into the list it came from', () => {
  it('brings a new work with its number and channels, and a changed field, each once', () => {
    const list = demo();
    const copy = copyOf(list);
    const { workId, editionId } = copy.call('works.create', { title: 'A Winter of Small Boats' });
    const { formatId } = copy.call('formats.create', { editionId, form: 'BC' });
    const [channel] = copy.call('channels.list', {}).channels;
    copy.call('listings.create', { formatId, channelId: channel?.id ?? 0 });
    copy.call('numbers.assign', { formatId });
    // The same keys are taken here by something else.
    list.call('works.create', { title: 'Here Meanwhile' });
    const merged = merge(list, copy);
    expect(merged).toMatchObject({ conflicts: [], left: 0 });
    expect(merged.records).toContain('A Winter of Small Boats');
    const titles = list.call('works.list', {}).works.map(({ title }) => title);
    expect(titles).toContain('A Winter of Small Boats');
    expect(titles).toContain('Here Meanwhile');
    expect(workId).toBeGreaterThan(0);
    sound(list);
    // Once more brings nothing.
    expect(merge(list, copy)).toMatchObject({ taken: 0, conflicts: [] });
    // And the other way round brings only what was made here.
    expect(merge(copy, list).records).toContain('Here Meanwhile');
    expect(told(copy)).toEqual(told(list));
    sound(copy);
    expect(merge(list, copy)).toMatchObject({ taken: 0, conflicts: [] });
  });

  it('asks where both have changed the same field, and takes what was chosen', () => {
    const list = demo();
    const { workId, editionId } = list.call('works.create', { title: 'Boats' });
    const copy = copyOf(list);
    copy.call('editions.update', { id: editionId, title: 'Boats in Winter', subtitle: 'With a map' });
    list.call('editions.update', { id: editionId, title: 'Winter Boats' });
    const tried = merge(list, copy, { dryRun: true });
    const [conflict] = tried.conflicts;
    expect(tried.conflicts).toHaveLength(1);
    expect(conflict).toMatchObject({
      field: 'title',
      before: 'Boats',
      here: 'Winter Boats',
      there: 'Boats in Winter',
      chosen: null,
      sides: ['here', 'there'],
    });
    expect(list.refusal('changes.merge', { file: stage(list, changes(copy)) })).toMatchObject({
      code: 'STEP_REFUSED',
      field: 'choices',
    });
    const title = () => list.call('works.get', { id: workId }).editions[0];
    expect(title()).toMatchObject({ title: 'Winter Boats', subtitle: '' });
    merge(list, copy, { choices: { [conflict?.id ?? '']: 'here' } });
    expect(title()).toMatchObject({ title: 'Winter Boats', subtitle: 'With a map' });
    merge(list, copy, { otherwise: 'there' });
    expect(title()).toMatchObject({ title: 'Boats in Winter', subtitle: 'With a map' });
    // A later change of the copy to what was taken over from it is no conflict.
    copy.call('editions.update', { id: editionId, title: 'Boats in Deep Winter' });
    expect(merge(list, copy)).toMatchObject({ conflicts: [] });
    expect(title()).toMatchObject({ title: 'Boats in Deep Winter' });
    sound(list);
  });

  it('never gives one number to two books: the second one is told and can only be left out', () => {
    const list = demo();
    const { workId, editionId } = list.call('works.create', { title: 'Boats' });
    const copy = copyOf(list);
    const first = copy.call('formats.create', { editionId, form: 'BC' });
    copy.call('numbers.assign', { formatId: first.formatId });
    const own = list.call('formats.create', { editionId, form: 'BB' });
    list.call('numbers.assign', { formatId: own.formatId });
    const tried = merge(list, copy, { dryRun: true });
    expect(tried.conflicts.map(({ entity, sides }) => [entity, sides])).toContainEqual([
      'number',
      ['here', 'there'],
    ]);
    const merged = merge(list, copy, { otherwise: 'there' });
    expect(merged.left).toBeGreaterThan(0);
    const [edition] = list.call('works.get', { id: workId }).editions;
    const held = edition?.formats.flatMap(({ form, isbn13 }) => (isbn13 === null ? [] : [form]));
    expect(held).toEqual(['BB']);
    sound(list);
  });

  it('takes steps in their order, and tells a step that both have taken', () => {
    const list = demo();
    const copy = copyOf(list);
    const steps = (where: List) => {
      const unsent = where
        .call('works.list', {})
        .works.flatMap(({ id }) => where.call('works.get', { id }).editions)
        .flatMap(({ formats }) => formats)
        .flatMap(({ listings, isbn13 }) => (isbn13 === null ? [] : listings))
        .find(({ standing }) => standing === 'unsent');
      return unsent?.id ?? 0;
    };
    const id = steps(copy);
    copy.call('listings.move', { id, to: 'sent', on: '2026-11-20' });
    copy.call('listings.move', { id, to: 'proof', on: '2026-11-22' });
    const merged = merge(list, copy);
    expect(merged).toMatchObject({ conflicts: [], left: 0 });
    sound(list);
    const other = copyOf(list);
    other.call('listings.move', { id, to: 'cleared', on: '2026-11-24' });
    list.call('listings.move', { id, to: 'cleared', on: '2026-11-25' });
    const tried = merge(list, other, { dryRun: true });
    expect(tried.conflicts.length).toBeGreaterThan(0);
    merge(list, other, { otherwise: 'here' });
    sound(list);
  });

  it('refuses another list, another form and a file that is none, and changes nothing', () => {
    const list = demo();
    const other = demo();
    const copy = copyOf(list);
    const file = JSON.parse(changes(copy).toString('utf8'));
    const refused = (content: unknown) =>
      list.refusal('changes.merge', { file: stage(list, JSON.stringify(content)) }).code;
    other.setToday('2026-11-24');
    expect(refused({ ...file, birth: 'a'.repeat(64) })).toBe('CATALOGUE_FOREIGN');
    expect(refused({ ...file, form: file.form + 1 })).toBe('CATALOGUE_NEWER');
    expect(refused({ ...file, form: 4 })).toBe('BAD_INPUT');
    expect(refused({ ...file, entries: [{}] })).toBe('BAD_INPUT');
    expect(list.refusal('changes.merge', { file: stage(list, '{') }).code).toBe('BAD_INPUT');
    const strange = { ...file.entries[0], seq: 90_000, hash: 'b'.repeat(64), entity: 'sqlite_schema' };
    expect(refused({ ...file, entries: [strange] })).toBe('BAD_INPUT');
    const column = { ...strange, entity: 'channel', action: 'added', before: null, after: { 'id") --': 1 } };
    expect(refused({ ...file, entries: [column] })).toBe('BAD_INPUT');
    sound(list);
  });

  it('carries one work alone', () => {
    const list = demo();
    const copy = copyOf(list);
    const { workId } = copy.call('works.create', { title: 'Only This One' });
    copy.call('works.create', { title: 'Not This One' });
    merge(list, copy, {}, workId);
    const titles = list.call('works.list', {}).works.map(({ title }) => title);
    expect(titles).toContain('Only This One');
    expect(titles).not.toContain('Not This One');
    sound(list);
  });
});
