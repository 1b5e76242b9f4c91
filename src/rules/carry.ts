import type { EditionFields } from '../contract/editions.ts';
import type { FormatFields } from '../contract/formats.ts';
import { ordinal } from './labels.ts';

/**
 * What carries from one format to another of the same edition: everything but what belongs to the form. Between
 * two printed forms trim, pages, paper and colour carry; between print and electronic they do not.
 */
export function fieldsCarriedBetweenForms(from: FormatFields, sameMade: boolean): Partial<FormatFields> {
  const { rightToLeft, largePrint, publicationDate, onSaleDate } = from;
  const always = { rightToLeft, publicationDate, onSaleDate };
  if (!sameMade) return always;
  const { trimWidthUm, trimHeightUm, pages, durationMinutes, interiorColour, paper } = from;
  return { ...always, largePrint, trimWidthUm, trimHeightUm, pages, durationMinutes, interiorColour, paper };
}

/** What carries from a format to the same format of the next edition: all but the number, the dates and the note. */
export function fieldsCarriedToNextEdition(from: FormatFields): FormatFields {
  return {
    form: from.form,
    formDetail: from.formDetail,
    caseKind: from.caseKind,
    trimWidthUm: from.trimWidthUm,
    trimHeightUm: from.trimHeightUm,
    pages: from.pages,
    durationMinutes: from.durationMinutes,
    interiorColour: from.interiorColour,
    paper: from.paper,
    finish: from.finish,
    insideCoverPrint: from.insideCoverPrint,
    largePrint: from.largePrint,
    rightToLeft: from.rightToLeft,
    publicationDate: null,
    onSaleDate: null,
    note: '',
    prices: from.prices,
  };
}

/** The next edition's fields before the user's changes: all carry, the number rises and the statement follows it. */
export function nextEditionFields(from: EditionFields): EditionFields {
  const number = (from.number ?? 1) + 1;
  return {
    title: from.title,
    subtitle: from.subtitle,
    number,
    statement: `${ordinal(number)} edition`,
    contributors: from.contributors,
    language: from.language,
    imprint: from.imprint,
    series: from.series,
    seriesNumber: from.seriesNumber,
    description: from.description,
    keywords: from.keywords,
    subjects: from.subjects,
    audience: from.audience,
    ageFrom: from.ageFrom,
    ageTo: from.ageTo,
  };
}
