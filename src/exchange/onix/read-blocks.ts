import { AT_STANDING } from '../../rules/onix/products.ts';
import { all, type Element, holdsOnly, insideXml, parts, text, textOf } from './element.ts';
import { descriptionKey } from './keys.ts';
import { isbnIn } from './read-identity.ts';
import { bind, bounded, dayOf, keep, type Reading } from './read-product.ts';
import { plainDescription, plainOfXhtml } from './xhtml.ts';

/** The plain text of a Text element: of XHTML its paragraphs, of markup written as text the same. */
export function plainTextOf(element: Element): string {
  const marked = parts(element).length > 0;
  return marked ? plainOfXhtml(insideXml(element)) : plainDescription(textOf(element));
}

/** Block 2: the description (List 153 code 03, else the short one, 02); all other texts are kept. */
export function readCollateral(to: Reading, block: Element): void {
  const texts = all(block, 'TextContent');
  const open = (element: Element) =>
    all(element, 'ContentAudience').every((audience) => ['00', '03'].includes(textOf(audience)));
  const find = (type: string) =>
    texts.find((element) => text(element, 'TextType') === type && open(element)) ??
    texts.find((element) => text(element, 'TextType') === type);
  const chosen = find('03') ?? find('02');
  const [body] = chosen ? all(chosen, 'Text') : [];
  const plain = body ? plainTextOf(body) : '';
  const description = bounded(to, plain, 'description', 20_000);
  to.product.edition.description = description;
  for (const element of parts(block)) {
    if (element !== chosen || description === '') keep(to, 'CollateralDetail', element);
    else bind(to, 'CollateralDetail', element, descriptionKey(description));
  }
}

/** The day of a date composite, or null where it is no single full day. */
function dateIn(element: Element): string | null {
  const [date] = all(element, 'Date');
  const form = date?.attributes.dateformat ?? text(element, 'DateFormat');
  return date && ['', '00', '13', '14'].includes(form) ? dayOf(textOf(date)) : null;
}

/** Publication date (List 163 code 01) and first day of sale (02); a date yields to one typed in later. */
function readDates(to: Reading, block: Element): void {
  const { format } = to.product;
  format.publicationDate = null;
  format.onSaleDate = null;
  for (const element of all(block, 'PublishingDate')) {
    const role = text(element, 'PublishingDateRole');
    const day = dateIn(element);
    const field = role === '01' ? 'publicationDate' : role === '02' ? 'onSaleDate' : null;
    if (field === null || day === null || format[field] !== null) {
      if (field !== null && day === null)
        to.product.notes.push(`The date of role ${role} is no full day and is kept beside.`);
      keep(to, 'PublishingDetail', element, `${role}|*`);
      continue;
    }
    format[field] = day;
    const [date] = all(element, 'Date');
    const plain = holdsOnly({ ...element, children: element.children.filter((part) => part !== date) }, [
      'PublishingDateRole',
    ]);
    if (!plain || (date && textOf(date).length !== 8))
      bind(to, 'PublishingDetail', element, `${role}|${day}`);
  }
}

/** The publisher is the house's own or belongs to this product for good. */
function readPublishers(to: Reading, block: Element): void {
  const publishers = all(block, 'Publisher');
  const main = publishers.find((element) => ['', '01'].includes(text(element, 'PublishingRole')));
  to.product.publisher = main ? text(main, 'PublisherName') : '';
  const own =
    publishers.length === 1 &&
    main !== undefined &&
    holdsOnly(main, ['PublishingRole', 'PublisherName']) &&
    to.product.publisher === to.house.publisher;
  if (!own) for (const element of publishers) keep(to, 'PublishingDetail', element, '*');
}

/** Block 4: imprint, publisher, status, dates and rights. */
export function readPublishing(to: Reading, block: Element): void {
  const { product, house } = to;
  const [imprint, ...more] = all(block, 'Imprint');
  product.edition.imprint = bounded(to, imprint ? text(imprint, 'ImprintName') : '', 'imprint', 20_000);
  if (imprint && (product.edition.imprint === '' || !holdsOnly(imprint, ['ImprintName'])))
    bind(to, 'PublishingDetail', imprint, product.edition.imprint);
  for (const element of more) keep(to, 'PublishingDetail', element);
  readPublishers(to, block);
  readDates(to, block);
  for (const element of parts(block)) {
    switch (element.name) {
      case 'Imprint':
      case 'Publisher':
      case 'PublishingDate':
        break;
      case 'PublishingStatus':
        product.status = textOf(element);
        bind(to, 'PublishingDetail', element, AT_STANDING);
        break;
      case 'CountryOfPublication':
        if (textOf(element) !== house.country) keep(to, 'PublishingDetail', element, '*');
        break;
      case 'SalesRights':
        keep(to, 'PublishingDetail', element, '*');
        break;
      default:
        keep(to, 'PublishingDetail', element);
    }
  }
}

const OWN_WORK = ['WorkRelationCode', 'WorkIdentifier'];

/** Block 5: what the product belongs to and goes with; used to group products, and kept. */
export function readRelated(to: Reading, block: Element): void {
  const { product, house } = to;
  for (const element of parts(block)) {
    if (element.name === 'RelatedWork') {
      const ids = all(element, 'WorkIdentifier');
      const names = ids.map(
        (id) => `${text(id, 'WorkIDType')}:${text(id, 'IDTypeName')}:${text(id, 'IDValue')}`,
      );
      if (text(element, 'WorkRelationCode') === '01') product.works.push(...names);
      const own = names[0]?.startsWith(`01:${house.sender} works:`) && holdsOnly(element, OWN_WORK);
      if (!own) keep(to, 'RelatedMaterial', element);
      continue;
    }
    const isbn = element.name === 'RelatedProduct' ? isbnIn(element) : null;
    const codes = all(element, 'ProductRelationCode').map(textOf);
    if (isbn !== null) product.related.push({ codes, isbn13: isbn.replace(/[-\s]/g, '') });
    keep(to, 'RelatedMaterial', element, isbn === null ? '' : `${isbn.replace(/[-\s]/g, '')}|*`);
  }
}
