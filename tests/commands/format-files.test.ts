import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
});
afterEach(() => catalogue.close());

const formats = (asOf?: string) => {
  const { works } = catalogue.call('works.list', { search: 'Salt' });
  const { editions } = catalogue.call('works.get', { id: works[0]?.id ?? 0, ...(asOf ? { asOf } : {}) });
  return editions.flatMap((edition) => edition.formats);
};
/** The second edition's paperback, then its e-book. */
const [PAPERBACK, EBOOK] = [0, 1];
const formatAt = (index: number) => {
  const found = formats()[index];
  if (!found) throw new Error(`There is no format at ${index}.`);
  return found;
};
const sha = 'a'.repeat(64);

describe('final files of a format', () => {
  it('are recorded; a revised one takes the place of the one in force, which is kept', () => {
    const formatId = formatAt(PAPERBACK).id;
    const first = catalogue.call('formats.recordFile', {
      formatId,
      kind: 'interior',
      fileName: 'salt-2-inside.pdf',
      sha256: sha,
      finalOn: '2026-02-20',
    });
    catalogue.call('formats.recordFile', { formatId, kind: 'cover', fileName: 'salt-2-cover.pdf' });
    const second = catalogue.call('formats.recordFile', {
      formatId,
      kind: 'interior',
      fileName: 'salt-2-inside-b.pdf',
      note: 'page 12 mended',
    });
    expect(second.replacedId).toBe(first.fileId);
    expect(formatAt(PAPERBACK).files.map(({ id: _, ...file }) => file)).toEqual([
      {
        kind: 'interior',
        fileName: 'salt-2-inside-b.pdf',
        finalOn: '2026-03-02',
        sha256: null,
        note: 'page 12 mended',
        ended: null,
      },
      {
        kind: 'cover',
        fileName: 'salt-2-cover.pdf',
        finalOn: '2026-03-02',
        sha256: null,
        note: '',
        ended: null,
      },
      {
        kind: 'interior',
        fileName: 'salt-2-inside.pdf',
        finalOn: '2026-02-20',
        sha256: sha,
        note: '',
        ended: { on: '2026-03-02', how: 'replaced', reason: '' },
      },
    ]);
    catalogue.call('formats.withdrawFile', { id: second.fileId, reason: 'fonts were missing' });
    expect(
      formatAt(PAPERBACK)
        .files.filter((file) => file.ended === null)
        .map((file) => file.kind),
    ).toEqual(['cover']);
  });

  it('stand as they did on a past day', () => {
    const formatId = formatAt(PAPERBACK).id;
    catalogue.call('formats.recordFile', { formatId, kind: 'cover', fileName: 'a.pdf' });
    catalogue.setToday('2026-03-20');
    catalogue.call('formats.recordFile', { formatId, kind: 'cover', fileName: 'b.pdf' });
    const on = (day: string) =>
      formats(day)
        .find((format) => format.id === formatId)
        ?.files.map((file) => [file.fileName, file.ended?.how ?? 'in force']);
    expect(on('2026-03-10')).toEqual([['a.pdf', 'in force']]);
    expect(on('2026-03-20')).toEqual([
      ['b.pdf', 'in force'],
      ['a.pdf', 'replaced'],
    ]);
  });

  it.each([
    [{ kind: 'audio', fileName: 'x.mp3' }, 'kind'],
    [{ kind: 'interior', fileName: ' ' }, 'fileName'],
    [{ kind: 'interior', fileName: 'x.pdf', sha256: 'A'.repeat(64) }, 'sha256'],
    [{ kind: 'interior', fileName: 'x.pdf', finalOn: '2026-03-03' }, 'finalOn'],
    [{ kind: 'interior', fileName: 'x.pdf', finalOn: '2026-02-31' }, 'finalOn'],
  ] as const)('refuses %o at its field', (given, field) => {
    const formatId = formatAt(PAPERBACK).id;
    expect(catalogue.refusal('formats.recordFile', { formatId, ...given })).toMatchObject({
      code: 'BAD_INPUT',
      field,
    });
    expect(formatAt(PAPERBACK).files).toEqual([]);
  });

  it('may not go back behind the one in force, nor end twice', () => {
    const formatId = formatAt(EBOOK).id;
    const { fileId } = catalogue.call('formats.recordFile', {
      formatId,
      kind: 'e-book',
      fileName: 'salt.epub',
    });
    expect(
      catalogue.refusal('formats.recordFile', {
        formatId,
        kind: 'e-book',
        fileName: 'older.epub',
        finalOn: '2026-03-01',
      }),
    ).toMatchObject({ code: 'BAD_INPUT', field: 'finalOn' });
    catalogue.call('formats.withdrawFile', { id: fileId, reason: 'wrong cover inside' });
    expect(catalogue.refusal('formats.withdrawFile', { id: fileId, reason: 'again' })).toMatchObject({
      code: 'STEP_REFUSED',
    });
    expect(catalogue.refusal('formats.withdrawFile', { id: 99, reason: 'x' })).toMatchObject({
      code: 'NOT_FOUND',
    });
  });

  it('may come for a format on sale, never for one that is retired', () => {
    const live = formats().at(-2);
    expect(live?.standing).toBe('live');
    catalogue.call('formats.recordFile', {
      formatId: live?.id ?? 0,
      kind: 'cover',
      fileName: 'new-cover.pdf',
    });
    const { works } = catalogue.call('works.list', { search: 'Lantern' });
    const retired = catalogue.call('works.get', { id: works[0]?.id ?? 0 }).editions[0]?.formats[0];
    expect(
      catalogue.refusal('formats.recordFile', {
        formatId: retired?.id ?? 0,
        kind: 'cover',
        fileName: 'x.pdf',
      }),
    ).toMatchObject({ code: 'FIELD_LOCKED' });
  });

  it('leave with a format that never had a number; a superseded one keeps the format', () => {
    const editionId = formatAt(PAPERBACK).editionId;
    const { formatId } = catalogue.call('formats.create', { editionId, form: 'BE' });
    catalogue.call('formats.recordFile', { formatId, kind: 'cover', fileName: 'a.pdf' });
    catalogue.call('formats.remove', { id: formatId });
    const other = catalogue.call('formats.create', { editionId, form: 'BE' }).formatId;
    catalogue.call('formats.recordFile', { formatId: other, kind: 'cover', fileName: 'a.pdf' });
    catalogue.call('formats.recordFile', { formatId: other, kind: 'cover', fileName: 'b.pdf' });
    expect(catalogue.refusal('formats.remove', { id: other })).toMatchObject({ code: 'IN_USE' });
    expect(catalogue.call('catalogue.check', {})).toMatchObject({ ok: true });
  });
});
