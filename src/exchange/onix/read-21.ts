import { all, type Element, parts, text, textOf } from './element.ts';
import { plainTextOf } from './read-blocks.ts';
import { readExtents, readForm, readMeasures } from './read-form.ts';
import { isbnIn, readIsbn } from './read-identity.ts';
import { bounded, dayOf, keep, type Reading } from './read-product.ts';
import { readAudience, readLanguage, readSubjects } from './read-subjects.ts';
import { retailPrices } from './read-supply.ts';
import { nameOf, titleIn } from './read-titles.ts';

// ONIX 2.1 by common knowledge of the standard (memory): no schema of it was at hand. Its parts lie flat in the product,
// partly under other names; they are brought under the names of 3.0 where the meaning is the same and then read alike.
// What is not read is kept, but has no place in a message of ONIX 3.

const make = (name: string, ...children: (Element | string)[]): Element => ({
  name,
  attributes: {},
  children,
});
const leaf = (name: string, value: string) => make(name, value);
const renamed = (element: Element, names: Record<string, string>): Element => ({
  ...element,
  children: element.children.map((part) =>
    typeof part === 'string' ? part : { ...part, name: names[part.name] ?? part.name },
  ),
});

/** Product forms of List 7, for 2.1, that List 150 writes otherwise: e-books and downloads (memory). */
const FORMS: Record<string, string> = { DG: 'ED', DH: 'EC', DF: 'ED', DA: 'EA', AI: 'AJ' };

/** List 10, kinds of e-publication of 2.1, as details of the form: 022 and 044 PDF, 029 EPUB (memory). */
const EPUBS: Record<string, string> = { '022': 'E107', '044': 'E107', '002': 'E107', '029': 'E101' };

/** The description parts of a flat product under the names of a DescriptiveDetail of 3.0. */
function descriptiveOf(product: Element): Element {
  const children: Element[] = [];
  for (const element of parts(product)) {
    const value = textOf(element);
    switch (element.name) {
      case 'ProductForm':
        children.push(leaf('ProductForm', FORMS[value] ?? value));
        break;
      case 'EpubType':
        if (EPUBS[value]) children.push(leaf('ProductFormDetail', EPUBS[value]));
        break;
      case 'Measure':
        children.push(renamed(element, { MeasureTypeCode: 'MeasureType' }));
        break;
      case 'NumberOfPages':
        children.push(
          make('Extent', leaf('ExtentType', '00'), leaf('ExtentValue', value), leaf('ExtentUnit', '03')),
        );
        break;
      case 'LanguageOfText':
        children.push(make('Language', leaf('LanguageRole', '01'), leaf('LanguageCode', value)));
        break;
      case 'BASICMainSubject':
        children.unshift(make('Subject', leaf('SubjectSchemeIdentifier', '10'), leaf('SubjectCode', value)));
        break;
      case 'AudienceCode':
      case 'Audience':
      case 'AudienceRange':
      case 'Language':
      case 'Extent':
      case 'Subject':
      case 'ProductFormDetail':
        children.push(element);
    }
  }
  return make('DescriptiveDetail', ...children);
}

/** Title (List 15 code 01), or the older single elements. */
function readTitle(to: Reading, product: Element): void {
  const titles = all(product, 'Title');
  const main = titles.find((title) => text(title, 'TitleType') === '01') ?? titles[0];
  const { edition } = to.product;
  const whole = main ? titleIn(main) : text(product, 'DistinctiveTitle') || titleIn(product);
  edition.title = bounded(to, whole, 'title');
  edition.subtitle = bounded(to, text(main ?? product, 'Subtitle'), 'subtitle', 20_000);
  const [series] = all(product, 'Series');
  const [seriesTitle] = series ? all(series, 'Title') : [];
  edition.series = series ? text(series, 'TitleOfSeries') || (seriesTitle ? titleIn(seriesTitle) : '') : '';
  edition.seriesNumber = series ? text(series, 'NumberWithinSeries') : '';
}

function readContributors(to: Reading, product: Element): void {
  const list: { role: string; name: string }[] = [];
  for (const element of all(product, 'Contributor')) {
    const name = bounded(to, nameOf(element), 'contributor’s name');
    for (const role of all(element, 'ContributorRole').map(textOf))
      if (name !== '' && /^[A-Z]\d\d$/.test(role) && list.length < 100) list.push({ role, name });
  }
  to.product.edition.contributors = list;
}

function readEdition(to: Reading, product: Element): void {
  const { edition, format } = to.product;
  const number = text(product, 'EditionNumber');
  edition.number = /^[1-9]\d{0,2}$/.test(number) ? Number(number) : null;
  edition.statement = bounded(to, text(product, 'EditionStatement'), 'edition statement', 20_000);
  format.largePrint = all(product, 'EditionTypeCode').some((type) => textOf(type) === 'LTE');
}

/** The main description (List 33 code 01), else the short one (02), by composite or by the old element. */
function readText(to: Reading, product: Element): void {
  const texts = all(product, 'OtherText');
  const find = (type: string) => texts.find((element) => text(element, 'TextTypeCode') === type);
  const chosen = find('01') ?? find('03') ?? find('02');
  const [body] = chosen ? all(chosen, 'Text') : all(product, 'MainDescription');
  to.product.edition.description = bounded(to, body ? plainTextOf(body) : '', 'description', 20_000);
}

function readPublishing(to: Reading, product: Element): void {
  const { product: read } = to;
  const [imprint] = all(product, 'Imprint');
  read.edition.imprint = bounded(
    to,
    imprint ? text(imprint, 'ImprintName') : text(product, 'ImprintName'),
    'imprint',
    20_000,
  );
  const [publisher] = all(product, 'Publisher');
  read.publisher = publisher ? text(publisher, 'PublisherName') : text(product, 'PublisherName');
  read.status = text(product, 'PublishingStatus') || null;
  const [date] = all(product, 'PublicationDate');
  read.format.publicationDate = date ? dayOf(textOf(date)) : null;
  read.format.onSaleDate = null;
  if (date && read.format.publicationDate === null)
    read.notes.push(`The publication date '${textOf(date)}' is no full day and is kept beside.`);
}

function readSupply(to: Reading, product: Element): void {
  const details = all(product, 'SupplyDetail').map((detail) => ({
    ...detail,
    children: detail.children.map((part) =>
      typeof part === 'string' || part.name !== 'Price'
        ? part
        : renamed(part, { PriceTypeCode: 'PriceType' }),
    ),
  }));
  to.product.format.prices = retailPrices([make('ProductSupply', ...details)], to.house.currency)
    .map(({ currency, amountMinor, tax }) => ({ currency, amountMinor, tax }))
    .sort((a, b) => (a.currency < b.currency ? -1 : 1));
}

/** Parts that hold nothing beside what was read. */
const READ = new Set(
  'RecordReference NotificationType ProductIdentifier ISBN EAN13 ProductForm NumberOfPages EditionNumber EditionStatement LanguageOfText DistinctiveTitle Subtitle BASICMainSubject AudienceCode PublishingStatus'.split(
    ' ',
  ),
);

/** Reads a product of ONIX 2.1. */
export function readProduct21(to: Reading, product: Element): void {
  const { product: read } = to;
  read.notification = text(product, 'NotificationType');
  const isbn = isbnIn(product) ?? (text(product, 'EAN13') || text(product, 'ISBN') || null);
  readIsbn(to, isbn);
  const descriptive = descriptiveOf(product);
  for (const part of [readForm, readMeasures, readLanguage, readExtents, readSubjects, readAudience])
    part(to, descriptive);
  readTitle(to, product);
  readContributors(to, product);
  readEdition(to, product);
  readText(to, product);
  readPublishing(to, product);
  readSupply(to, product);
  for (const element of all(product, 'RelatedProduct')) {
    const id = isbnIn(element) ?? (text(element, 'ISBN') || null);
    const codes = all(element, 'RelationCode').map(textOf);
    if (id !== null) read.related.push({ codes, isbn13: id.replace(/[-\s]/g, '') });
  }
  read.kept = [];
  for (const element of parts(product)) if (!READ.has(element.name)) keep(to, 'Product', element);
}
