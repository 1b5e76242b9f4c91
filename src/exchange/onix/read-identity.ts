import { parseIsbn } from '../../rules/isbn/index.ts';
import { AT_STANDING } from '../../rules/onix/products.ts';
import { all, type Element, holdsOnly, text, textOf } from './element.ts';
import { bind, keep, type Reading } from './read-product.ts';

const SIMPLE_ID = ['ProductIDType', 'IDValue'];

/** The ISBN of an identifier composite: as ISBN-13 (15), GTIN-13 (03) or the old ISBN-10 (02). */
export function isbnIn(element: Element): string | null {
  const identifiers = all(element, 'ProductIdentifier');
  for (const type of ['15', '03', '02']) {
    const found = identifiers.find((id) => text(id, 'ProductIDType') === type);
    const value = found ? text(found, 'IDValue') : '';
    if (value !== '' && (type !== '03' || /^97[89]/.test(value))) return value;
  }
  return null;
}

/** Takes the number of a product, or says why there is none. */
export function readIsbn({ product }: Reading, written: string | null): void {
  product.isbnText = written ?? '';
  if (written === null) {
    product.isbnProblem = 'This product has no ISBN; Edition Ledger records only what has one.';
    return;
  }
  const result = parseIsbn(written);
  if (result.ok) product.isbn13 = result.isbn.isbn13;
  else product.isbnProblem = [result.problem.message, result.problem.hint].filter(Boolean).join(' ');
}

/** Whether an identifier only repeats the product's own ISBN in another form. */
function repeats(to: Reading, element: Element): boolean {
  const type = text(element, 'ProductIDType');
  if (!['15', '03', '02'].includes(type) || !holdsOnly(element, SIMPLE_ID)) return false;
  const result = parseIsbn(text(element, 'IDValue'));
  return result.ok && result.isbn.isbn13 === to.product.isbn13;
}

/** The head of a record: whatever is not one of the blocks read apart. */
export function readHead(to: Reading, element: Element): void {
  const { product, house } = to;
  switch (element.name) {
    case 'RecordReference':
      if (textOf(element) !== `edition-ledger.${product.isbn13}`) keep(to, 'Product', element, '*');
      return;
    case 'NotificationType':
      bind(to, 'Product', element, AT_STANDING);
      return;
    case 'RecordSourceType':
    case 'RecordSourceName': {
      const own = element.name === 'RecordSourceType' ? '01' : house.sender;
      if (textOf(element) !== own) keep(to, 'Product', element, '*');
      return;
    }
    case 'ProductIdentifier':
      if (!repeats(to, element)) keep(to, 'Product', element, text(element, 'ProductIDType'));
      return;
    default:
      keep(to, 'Product', element);
  }
}
