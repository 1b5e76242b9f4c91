import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { EditionAdvice } from '../../src/contract/edition-advice.ts';
import type { InputOf } from '../../src/contract/index.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
});
afterEach(() => catalogue.close());

const work = (search: string) => {
  const { works } = catalogue.call('works.list', { search });
  return catalogue.call('works.get', { id: works[0]?.id ?? 0 });
};
const editions = () => {
  const [second, first] = work('Salt').editions;
  if (!first || !second) throw new Error('The demo has two editions of it.');
  return { first, second };
};
type Stated = InputOf<'editions.advise'>['stated'];
const advise = (editionId: number, stated: Stated = {}) =>
  catalogue.call('editions.advise', { editionId, stated });
const verdicts = (advice: EditionAdvice) =>
  Object.fromEntries(advice.formats.map((format) => [format.name, format.verdict]));

describe('an edition on sale whose changes are thought about', () => {
  it.each([['price', 'cover'], ['price'], ['cover']] as const)('keeps its numbers for %s', (...changes) => {
    const advice = advise(editions().first.id, {
      text: 'unchanged',
      changes: changes.map((change) => ({ change })),
    });
    expect(advice).toMatchObject({ mode: 'pondering', overall: 'same', needsEdition: false, asked: null });
    expect(advice.headline).toBe('Keep the numbers: this is a reprint or a correction.');
    expect(verdicts(advice)).toEqual({ Paperback: 'same', 'E-book (EPUB)': 'same' });
    expect(advice.toDo.length).toBeGreaterThan(3);
  });

  it('takes new numbers for a changed subtitle, whatever else is left', () => {
    const advice = advise(editions().first.id, { text: 'unchanged', changes: [{ change: 'subtitle' }] });
    expect(advice).toMatchObject({
      overall: 'new',
      needsEdition: true,
      headline: 'New numbers are required.',
    });
    expect(advice.formats[0]?.lines[0]).toMatchObject({ change: 'subtitle', told: 'stated' });
    expect(advice.toDo).toEqual([]);
  });

  it('judges each format by what bears on it', () => {
    const [paperback, ebook] = editions().first.formats;
    const advice = advise(editions().first.id, {
      text: 'corrections',
      changes: [
        { change: 'usage' },
        { change: 'trim', formatIds: [paperback?.id ?? 0] },
        { change: 'price', formatIds: [ebook?.id ?? 0] },
      ],
      added: [{ form: 'BB' }, { form: 'ED', formDetail: 'E107' }],
    });
    expect(verdicts(advice)).toEqual({
      Paperback: 'judge',
      'E-book (EPUB)': 'new',
      Hardcover: 'new',
      'E-book (PDF)': 'new',
    });
    expect(advice.headline).toBe(
      'A new number for e-book (EPUB), hardcover and e-book (PDF); your call for paperback.',
    );
    expect(advice.needsEdition).toBe(false);
    expect(advice.formats.at(-1)?.lines.map((line) => line.change)).toEqual(['file-format']);
  });

  it('refuses the wish for a new number where nothing calls for it, and to keep it where something does', () => {
    const { first } = editions();
    const wanting = advise(first.id, { text: 'unchanged', changes: [{ change: 'cover' }], wish: 'new' });
    expect(wanting.formats[0]?.answer).toMatchObject({ granted: false });
    expect(wanting.formats[0]?.answer?.sentence).toContain('not permitted');
    expect(wanting.formats[0]?.answer?.source).toContain('frequent questions');
    const keeping = advise(first.id, { text: 'substantial', wish: 'keep' });
    expect(keeping.formats[0]?.answer).toMatchObject({ granted: false });
    expect(keeping.formats[0]?.answer?.sentence).toContain('cannot be kept');
    expect(keeping.formats[0]?.answer?.source).toContain('section 5.2');
    expect(advise(first.id, { text: 'some', wish: 'keep' }).formats[0]?.answer?.granted).toBeNull();
  });

  it('asks for the extent of the text until it is said or no longer matters', () => {
    const { first } = editions();
    expect(advise(first.id).asked).toContain('how far the text changes');
    expect(advise(first.id, { changes: [{ change: 'title' }] }).asked).toBeNull();
    expect(advise(first.id, { text: 'unchanged' }).asked).toBeNull();
  });

  it('refuses a format of another edition, by its place', () => {
    const { first, second } = editions();
    expect(
      catalogue.refusal('editions.advise', {
        editionId: first.id,
        stated: { changes: [{ change: 'price', formatIds: [second.formats[0]?.id ?? 0] }] },
      }),
    ).toMatchObject({ code: 'NOT_FOUND', field: 'stated.changes.0.formatIds' });
  });
});

describe('a draft beside the edition it replaces', () => {
  it('is judged by the records and by what only the user can say', () => {
    const { second } = editions();
    const advice = advise(second.id);
    expect(advice).toMatchObject({ mode: 'draft', against: 'The Salt Almanac', overall: 'mixed' });
    expect(verdicts(advice)).toEqual({
      Paperback: 'judge',
      'E-book (EPUB)': 'judge',
      'Hardcover (jacket)': 'new',
    });
    expect(advice.asked).not.toBeNull();
    expect(advice.formats[0]?.lines).toEqual([
      expect.objectContaining({
        change: 'matter-added',
        detail: 'new: Tobias Wrenfield (foreword)',
        told: 'record',
      }),
    ]);
    const stated = advise(second.id, { text: 'substantial' });
    expect(stated).toMatchObject({ overall: 'new', needsEdition: true, asked: null });
  });

  it('says that a draft which is nothing but a reprint should bear the old numbers', () => {
    const { second } = editions();
    catalogue.call('editions.update', {
      id: second.id,
      contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
    });
    const hardcover = second.formats.find((format) => format.form === 'BB');
    catalogue.call('formats.cancel', { id: hardcover?.id ?? 0, reason: 'not wanted' });
    const advice = advise(second.id, { text: 'corrections', changes: [{ change: 'cover' }], wish: 'new' });
    expect(advice.overall).toBe('same');
    expect(advice.toDo[0]).toContain('should bear the old numbers');
    expect(advice.formats.every((format) => format.answer?.granted === false)).toBe(true);
  });

  it('has nothing to say of an edition that was never on sale and replaces none', () => {
    const { id } = work('Fen Light').editions[0] ?? { id: 0 };
    expect(catalogue.refusal('editions.advise', { editionId: id })).toMatchObject({ code: 'NOT_READY' });
    expect(catalogue.refusal('editions.advise', { editionId: 9999 })).toMatchObject({ code: 'NOT_FOUND' });
  });
});

describe('what was stated', () => {
  it('is kept with the next edition it led to, line by line with its rule and source, and journalled', () => {
    const { editions: knots } = work('Knots');
    const from = knots[0];
    const { editionId } = catalogue.call('editions.prepareNext', {
      editionId: from?.id ?? 0,
      carry: from?.formats.map((format) => format.id) ?? [],
      stated: { text: 'substantial', changes: [{ change: 'cover' }], note: 'Eight knots are new.' },
    });
    const { kept } = catalogue.call('editions.keptAdvice', { editionId });
    expect(kept).toEqual([
      {
        id: 1,
        madeOn: '2026-03-02',
        verdict: 'new',
        note: 'Eight knots are new.',
        lines: [
          expect.objectContaining({
            formatName: 'Hardcover (laminate)',
            title: 'The text changes substantially',
            told: 'stated',
            verdict: 'new',
            source: expect.stringContaining('section 5.2'),
          }),
          expect.objectContaining({ title: 'The cover design or its colour changes', verdict: 'same' }),
        ],
      },
    ]);
    const { entries } = catalogue.call('journal.list', {});
    const own = entries.filter((entry) => entry.entity.startsWith('edition_advice'));
    expect(own).toHaveLength(3);
    expect(new Set(own.map((entry) => entry.workId))).toEqual(new Set([work('Knots').id]));
    expect(own.every((entry) => entry.operation === 'editions.prepareNext')).toBe(true);
  });

  it('can be kept with a draft or an edition on sale, is read as of a day, and is taken back by undoing it', () => {
    const { first } = editions();
    catalogue.call('editions.noteAdvice', {
      editionId: first.id,
      stated: { text: 'corrections', note: 'Second printing.' },
    });
    catalogue.setToday('2026-03-09');
    catalogue.call('editions.noteAdvice', { editionId: first.id, stated: { text: 'unchanged' } });
    const kept = (asOf?: string) =>
      catalogue
        .call('editions.keptAdvice', { editionId: first.id, ...(asOf ? { asOf } : {}) })
        .kept.map(({ madeOn, verdict }) => [madeOn, verdict]);
    expect(kept()).toEqual([
      ['2026-03-09', 'same'],
      ['2026-03-02', 'same'],
    ]);
    expect(kept('2026-03-05')).toEqual([['2026-03-02', 'same']]);
    const commandSeq = catalogue.call('journal.list', { count: 1 }).entries[0]?.commandSeq ?? 0;
    catalogue.call('journal.undo', { commandSeq });
    expect(kept()).toEqual([['2026-03-02', 'same']]);
    expect(catalogue.call('catalogue.check', {})).toMatchObject({ ok: true });
  });

  it('leaves with an edition that is removed', () => {
    const [from] = work('Knots').editions;
    const { editionId, formatIds } = catalogue.call('editions.prepareNext', {
      editionId: from?.id ?? 0,
      carry: from?.formats.map((format) => format.id) ?? [],
      takeNumbers: false,
      stated: { text: 'substantial' },
    });
    for (const id of formatIds) catalogue.call('formats.remove', { id });
    expect(catalogue.call('editions.keptAdvice', { editionId }).kept).toHaveLength(1);
    catalogue.call('editions.remove', { id: editionId });
    expect(catalogue.call('editions.keptAdvice', { editionId }).kept).toEqual([]);
    expect(catalogue.call('catalogue.check', {})).toMatchObject({ ok: true });
  });
});
