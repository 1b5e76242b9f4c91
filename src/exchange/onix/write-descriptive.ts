import { madeOf } from '../../contract/terms.ts';
import { AUDIENCE_CODES, CASE_CODES, measurement, subjectScheme } from '../../rules/onix/codes.ts';
import type { Items } from './items.ts';
import {
  agesKey,
  contributorKey,
  extentKey,
  keywordsKey,
  measureKey,
  seriesKey,
  subjectKey,
  titleKey,
} from './keys.ts';
import type { OnixHouse, OnixRecord } from './product.ts';
import type { XmlOut } from './xml-out.ts';

function form(out: XmlOut, { format }: OnixRecord, items: Items): void {
  items('ProductComposition', () => out.leaf('ProductComposition', '00'));
  items('ProductForm', () => out.leaf('ProductForm', format.form));
  const details = [format.formDetail, format.caseKind && CASE_CODES[format.caseKind]];
  for (const detail of details)
    if (detail) items('ProductFormDetail', () => out.leaf('ProductFormDetail', detail), detail);
}

/**
 * The size: a paperback's trim is its overall size (List 48: 01, 02, which the list prefers); boards overhang, so a
 * hardcover's trim is given as what it is (04, 05).
 */
function measures(out: XmlOut, { format }: OnixRecord, house: OnixHouse, items: Items): void {
  if (format.trimWidthUm === null || format.trimHeightUm === null) return;
  const [height, width] = format.form === 'BB' ? ['04', '05'] : ['01', '02'];
  for (const [type, um] of [
    [height, format.trimHeightUm],
    [width, format.trimWidthUm],
  ] as const) {
    items(
      'Measure',
      () => {
        const { value, unit } = measurement(um, house.lengthUnit);
        out.open('Measure');
        out.leaf('MeasureType', type);
        out.leaf('Measurement', value);
        out.leaf('MeasureUnitCode', unit);
        out.close('Measure');
      },
      () => measureKey(type, um),
    );
  }
}

/** A title in one element: subtitles are elements of their own, prefixes are not guessed. */
function titles(out: XmlOut, { edition }: OnixRecord, items: Items): void {
  if (edition.series)
    items(
      'Collection',
      () => {
        out.open('Collection');
        out.leaf('CollectionType', '10');
        out.open('TitleDetail');
        out.leaf('TitleType', '01');
        out.open('TitleElement');
        out.leaf('TitleElementLevel', '02');
        if (edition.seriesNumber) out.leaf('PartNumber', edition.seriesNumber);
        out.leaf('TitleText', edition.series);
        out.close('TitleElement');
        out.close('TitleDetail');
        out.close('Collection');
      },
      () => seriesKey(edition),
    );
  else items('NoCollection', () => out.empty('NoCollection'), '');
  items(
    'TitleDetail',
    () => {
      out.open('TitleDetail');
      out.leaf('TitleType', '01');
      out.open('TitleElement');
      out.leaf('TitleElementLevel', '01');
      out.leaf('TitleText', edition.title);
      if (edition.subtitle) out.leaf('Subtitle', edition.subtitle);
      out.close('TitleElement');
      out.close('TitleDetail');
    },
    () => titleKey(edition),
  );
}

/** Contributors in order; a person named twice in a row (as author and illustrator) stays two entries. */
function contributors(out: XmlOut, { edition }: OnixRecord, items: Items): void {
  if (edition.contributors.length === 0) items('NoContributor', () => out.empty('NoContributor'));
  for (const [index, contributor] of edition.contributors.entries())
    items(
      'Contributor',
      () => {
        out.open('Contributor');
        out.leaf('SequenceNumber', String(index + 1));
        out.leaf('ContributorRole', contributor.role);
        out.leaf('PersonName', contributor.name);
        out.close('Contributor');
      },
      () => contributorKey(contributor),
    );
}

function editionParts(out: XmlOut, { edition, format }: OnixRecord, items: Items): void {
  if (format.largePrint) items('EditionType', () => out.leaf('EditionType', 'LTE'), 'LTE');
  const { number, statement } = edition;
  if (number !== null) items('EditionNumber', () => out.leaf('EditionNumber', String(number)));
  if (statement) items('EditionStatement', () => out.leaf('EditionStatement', statement), statement);
  if (number === null && !statement && !format.largePrint) items('NoEdition', () => out.empty('NoEdition'));
}

function extent(out: XmlOut, type: string, value: number, unit: string, items: Items): void {
  items(
    'Extent',
    () => {
      out.open('Extent');
      out.leaf('ExtentType', type);
      out.leaf('ExtentValue', String(value));
      out.leaf('ExtentUnit', unit);
      out.close('Extent');
    },
    () => extentKey(type, value),
  );
}

/** Language of the text, pages (List 23: 00 in print, 10 where they are only notional) and playing time (09). */
function language(out: XmlOut, { edition, format }: OnixRecord, items: Items): void {
  items(
    'Language',
    () => {
      out.open('Language');
      out.leaf('LanguageRole', '01');
      out.leaf('LanguageCode', edition.language);
      out.close('Language');
    },
    edition.language,
  );
  if (format.pages !== null)
    extent(out, madeOf(format.form) === 'e-book' ? '10' : '00', format.pages, '03', items);
  if (format.durationMinutes !== null) extent(out, '09', format.durationMinutes, '05', items);
}

/** Subjects in order: the first of each public scheme is its main one. Keywords are one subject (scheme 20). */
function subjects(out: XmlOut, { edition }: OnixRecord, house: OnixHouse, items: Items): void {
  const begun = new Set<string>();
  for (const subject of edition.subjects) {
    const scheme = subjectScheme(subject.scheme, subject.code);
    const main = (scheme === '93' || scheme === '10') && !begun.has(scheme);
    begun.add(scheme);
    items(
      'Subject',
      () => {
        out.open('Subject');
        if (main) out.empty('MainSubject');
        out.leaf('SubjectSchemeIdentifier', scheme);
        if (scheme === '24') out.leaf('SubjectSchemeName', `${house.sender} subjects`);
        out.leaf('SubjectCode', subject.code);
        if (subject.heading) out.leaf('SubjectHeadingText', subject.heading);
        out.close('Subject');
      },
      () => subjectKey(subject, main),
    );
  }
  if (edition.keywords.length === 0) return;
  items(
    'Subject',
    () => {
      out.open('Subject');
      out.leaf('SubjectSchemeIdentifier', '20');
      out.leaf('SubjectHeadingText', edition.keywords.map((word) => word.replaceAll(';', ',')).join('; '));
      out.close('Subject');
    },
    () => keywordsKey(edition.keywords),
  );
}

function ages(out: XmlOut, from: number | null, to: number | null): void {
  out.open('AudienceRange');
  out.leaf('AudienceRangeQualifier', '17');
  if (from !== null && from === to) {
    out.leaf('AudienceRangePrecision', '01');
    out.leaf('AudienceRangeValue', String(from));
  } else {
    if (from !== null) {
      out.leaf('AudienceRangePrecision', '03');
      out.leaf('AudienceRangeValue', String(from));
    }
    if (to !== null) {
      out.leaf('AudienceRangePrecision', '04');
      out.leaf('AudienceRangeValue', String(to));
    }
  }
  out.close('AudienceRange');
}

function audience(out: XmlOut, { edition }: OnixRecord, items: Items): void {
  const code = AUDIENCE_CODES[edition.audience];
  items(
    'Audience',
    () => {
      out.open('Audience');
      out.leaf('AudienceCodeType', '01');
      out.leaf('AudienceCodeValue', code);
      out.close('Audience');
    },
    edition.audience,
  );
  if (edition.ageFrom !== null || edition.ageTo !== null)
    items(
      'AudienceRange',
      () => ages(out, edition.ageFrom, edition.ageTo),
      () => agesKey(edition),
    );
}

/** Block 1: what the product is. `full` adds subjects and audience to what a registration needs. */
export function writeDescriptive(
  out: XmlOut,
  record: OnixRecord,
  house: OnixHouse,
  full: boolean,
  items: Items,
): void {
  form(out, record, items);
  measures(out, record, house, items);
  titles(out, record, items);
  contributors(out, record, items);
  editionParts(out, record, items);
  language(out, record, items);
  if (!full) return;
  subjects(out, record, house, items);
  audience(out, record, items);
}
