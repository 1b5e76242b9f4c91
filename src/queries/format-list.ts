import { type FormatRow, formatTerms } from '../contract/format-list.ts';
import { formName } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import { formatIds, type TableFormat, tableFormats, valuesOf } from '../store/format-list.ts';
import { allFilters } from '../store/saved-filters.ts';
import { readSettings } from '../store/settings.ts';
import type { Queries, QueryContext } from './context.ts';

/** The formats that the audit found something about: about themselves, or about the edition they belong to. */
function foundFormats(context: QueryContext, asOf: string | undefined): number[] {
  const day = asOf ?? context.today;
  const db = context.on(asOf);
  const { findings } = context.audit.on(day, context.today, db);
  const formats = new Set(findings.flatMap((finding) => finding.formatId ?? []));
  const editions = new Set(
    findings.flatMap((finding) => (finding.formatId === null ? (finding.editionId ?? []) : [])),
  );
  const ofEditions = db.all<{ id: number }>(
    'SELECT id FROM format WHERE edition_id IN (SELECT value FROM json_each(?))',
    JSON.stringify([...editions]),
  );
  return [...new Set([...formats, ...ofEditions.map((row) => row.id)])];
}

function rowOf({ title, number, isbn13, prices, listings, ...row }: TableFormat): FormatRow {
  return {
    id: row.id,
    workId: row.workId,
    editionId: row.editionId,
    edition: editionLabel({ title, number }),
    name: formName({ ...row, largePrint: row.largePrint === 1 }),
    standing: row.standing as FormatRow['standing'],
    hyphenated: shownIsbn(isbn13),
    people: row.people,
    language: row.language,
    imprint: row.imprint,
    publicationDate: row.publicationDate,
    onSaleDate: row.onSaleDate,
    prices: JSON.parse(prices) as FormatRow['prices'],
    listings: JSON.parse(listings) as FormatRow['listings'],
  };
}

export const formatListQueries = {
  'formats.find': (context, { terms, sort, asOf }) => {
    const db = context.on(asOf);
    const ids = formatIds(db, {
      terms,
      sort,
      currency: readSettings(context.db).currency,
      found: terms.withFindings ? foundFormats(context, asOf) : null,
      past: asOf !== undefined,
    });
    return { ids, all: db.one<{ n: number }>('SELECT count(*) AS n FROM format')?.n ?? 0 };
  },

  'formats.rows': (context, { ids, asOf }) => {
    const found = new Map(tableFormats(context.on(asOf), ids).map((row) => [row.id, rowOf(row)]));
    return { rows: ids.map((id) => found.get(id)).filter((row) => row !== undefined) };
  },

  'formats.choices': ({ db }) => ({
    forms: valuesOf(db, 'form'),
    languages: valuesOf(db, 'language'),
    imprints: valuesOf(db, 'imprint'),
  }),

  'filters.list': ({ db }) => ({
    filters: allFilters(db).flatMap(({ id, name, terms }) => {
      const read = formatTerms.safeParse(JSON.parse(terms));
      return read.success ? [{ id, name, terms: read.data }] : [];
    }),
  }),
} satisfies Queries<'formats.find' | 'formats.rows' | 'formats.choices' | 'filters.list'>;
