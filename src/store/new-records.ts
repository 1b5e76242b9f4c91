import type { EditionFields } from '../contract/editions.ts';
import type { FormatFields } from '../contract/formats.ts';
import type { WriteDb } from './connection.ts';

// The statements of an import, prepared once: building each insert anew would take longer than the insert itself.

/** Adds a work; answers its id. */
export function addWork(db: WriteDb, title: string): number {
  return db.run('INSERT INTO work (title) VALUES (?)', title).lastInsertRowid;
}

/** Adds an edition with its lists; answers its id. */
export function addEditionRow(db: WriteDb, workId: number, e: EditionFields): number {
  const id = db.run(
    `INSERT INTO edition (work_id, number, statement, title, subtitle, language, imprint, series, series_number,
       description, audience, age_from, age_to) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    workId,
    e.number,
    e.statement,
    e.title,
    e.subtitle,
    e.language,
    e.imprint,
    e.series,
    e.seriesNumber,
    e.description,
    e.audience,
    e.ageFrom,
    e.ageTo,
  ).lastInsertRowid;
  for (const [index, { role, name }] of e.contributors.entries())
    db.run(
      'INSERT INTO edition_contributor (edition_id, position, role, name) VALUES (?, ?, ?, ?)',
      id,
      index + 1,
      role,
      name,
    );
  for (const [index, { scheme, code, heading }] of e.subjects.entries())
    db.run(
      'INSERT INTO edition_subject (edition_id, position, scheme, code, heading) VALUES (?, ?, ?, ?, ?)',
      id,
      index + 1,
      scheme,
      code,
      heading,
    );
  for (const [index, keyword] of e.keywords.entries())
    db.run(
      'INSERT INTO edition_keyword (edition_id, position, keyword) VALUES (?, ?, ?)',
      id,
      index + 1,
      keyword,
    );
  return id;
}

/** Adds a format with its prices; answers its id. */
export function addFormatRow(db: WriteDb, editionId: number, plannedOn: string, f: FormatFields): number {
  const id = db.run(
    `INSERT INTO format (edition_id, form, form_detail, case_kind, trim_width_um, trim_height_um, pages,
       duration_minutes, interior_colour, paper, finish, inside_cover_print, large_print, right_to_left,
       publication_date, on_sale_date, note, planned_on)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    editionId,
    f.form,
    f.formDetail,
    f.caseKind,
    f.trimWidthUm,
    f.trimHeightUm,
    f.pages,
    f.durationMinutes,
    f.interiorColour,
    f.paper,
    f.finish,
    Number(f.insideCoverPrint),
    Number(f.largePrint),
    Number(f.rightToLeft),
    f.publicationDate,
    f.onSaleDate,
    f.note,
    plannedOn,
  ).lastInsertRowid;
  for (const { currency, amountMinor, tax } of f.prices)
    db.run(
      'INSERT INTO format_price (format_id, currency, amount_minor, tax) VALUES (?, ?, ?, ?)',
      id,
      currency,
      amountMinor,
      tax,
    );
  return id;
}

/**
 * Runs work that may fail for its own part alone: what it wrote is taken back when it throws, the rest of the
 * transaction stays.
 */
export function apart<T>(db: WriteDb, work: () => T): T {
  db.run('SAVEPOINT apart');
  try {
    const value = work();
    db.run('RELEASE apart');
    return value;
  } catch (error) {
    db.run('ROLLBACK TO apart');
    db.run('RELEASE apart');
    throw error;
  }
}
