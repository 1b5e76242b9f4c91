import { all, type Element, first, holdsOnly, parts, text, textOf } from './element.ts';
import { contributorKey, seriesKey, titleKey } from './keys.ts';
import { bind, bounded, cover, keep, type Reading } from './read-product.ts';

const BLOCK = 'DescriptiveDetail';
const PLAIN_TITLE = ['TitleElementLevel', 'TitleText', 'Subtitle'];

/** The title of a title element: whole, or prefix and rest put together. */
export function titleIn(element: Element): string {
  const whole = text(element, 'TitleText');
  if (whole) return whole;
  const rest = text(element, 'TitleWithoutPrefix');
  const prefix = text(element, 'TitlePrefix');
  if (!prefix) return rest;
  return /['’]$/.test(prefix) ? `${prefix}${rest}` : `${prefix} ${rest}`.trim();
}

const level = (element: Element) => text(element, 'TitleElementLevel');

/** Whether a title composite says no more than our own would. */
function isPlain(detail: Element, names: readonly string[], elements: number): boolean {
  const inside = all(detail, 'TitleElement');
  return (
    holdsOnly(detail, ['TitleType', 'TitleElement']) &&
    inside.length === elements &&
    inside.every((element) => holdsOnly(element, names))
  );
}

/** Title and subtitle: the distinctive title (List 15 code 01), of the product itself (List 149 code 01). */
export function readTitle(to: Reading, block: Element): void {
  const { edition } = to.product;
  const details = all(block, 'TitleDetail');
  const main = details.find((detail) => text(detail, 'TitleType') === '01') ?? details[0];
  const elements = main ? all(main, 'TitleElement') : [];
  const own = elements.find((element) => level(element) === '01' && titleIn(element) !== '') ?? elements[0];
  edition.title = bounded(to, own ? titleIn(own) : '', 'title');
  edition.subtitle = bounded(to, own ? text(own, 'Subtitle') : '', 'subtitle', 20_000);
  for (const detail of details) {
    if (detail !== main) keep(to, BLOCK, detail);
    else if (!isPlain(detail, PLAIN_TITLE, 1) || text(detail, 'TitleType') !== '01')
      bind(to, BLOCK, detail, titleKey({ title: edition.title, subtitle: edition.subtitle }));
  }
}

/** The series: the first collection with a title of its own (List 149 code 02), and the place in it. */
export function readSeries(to: Reading, block: Element): void {
  const { edition } = to.product;
  const collections = all(block, 'Collection').map((element) => {
    const elements = all(element, 'TitleDetail').flatMap((detail) => all(detail, 'TitleElement'));
    const named = elements.find((part) => level(part) === '02' && titleIn(part) !== '');
    const numbered = elements.find((part) => text(part, 'PartNumber') !== '');
    return {
      element,
      title: named ? titleIn(named) : '',
      number: numbered ? text(numbered, 'PartNumber') : '',
    };
  });
  const chosen = collections.find(({ title }) => title !== '');
  edition.series = bounded(to, chosen?.title ?? '', 'series', 20_000);
  edition.seriesNumber = bounded(to, chosen?.number ?? '', 'place in the series', 20_000);
  for (const { element } of collections) {
    if (element !== chosen?.element) {
      keep(to, BLOCK, element);
      continue;
    }
    const detail = first(element, 'TitleDetail');
    const plain =
      text(element, 'CollectionType') === '10' &&
      holdsOnly(element, ['CollectionType', 'TitleDetail']) &&
      all(element, 'TitleDetail').length === 1 &&
      detail !== undefined &&
      isPlain(detail, ['TitleElementLevel', 'PartNumber', 'TitleText'], 1);
    const { series, seriesNumber } = edition;
    if (!plain) bind(to, BLOCK, element, seriesKey({ series, seriesNumber }));
  }
}

/** The name of a contributor as it is read aloud. */
export function nameOf(contributor: Element): string {
  const name = (part: string) => text(contributor, part);
  const whole = name('PersonName') || name('CorporateName');
  if (whole) return whole;
  const order = [
    'TitlesBeforeNames',
    'NamesBeforeKey',
    'PrefixToKey',
    'KeyNames',
    'NamesAfterKey',
    'SuffixToKey',
  ];
  if (name('KeyNames')) return order.map(name).filter(Boolean).join(' ');
  const inverted = name('PersonNameInverted') || name('CorporateNameInverted');
  const [last = '', ...rest] = inverted.split(', ');
  return rest.length === 1 ? `${rest[0]} ${last}` : inverted;
}

const PLAIN_NAME = ['SequenceNumber', 'ContributorRole', 'PersonName'];

/** Contributors in order; one with several roles becomes an entry for each of them. */
export function readContributors(to: Reading, block: Element): void {
  const list: { role: string; name: string }[] = [];
  to.product.edition.contributors = list;
  for (const element of all(block, 'Contributor')) {
    const name = bounded(to, nameOf(element), 'contributor’s name');
    const roles = all(element, 'ContributorRole')
      .map(textOf)
      .filter((role) => /^[A-Z]\d\d$/.test(role));
    const [role, ...more] = roles;
    if (name === '' || role === undefined || list.length + roles.length > 100) {
      keep(to, BLOCK, element);
      continue;
    }
    for (const each of roles) list.push({ role: each, name });
    const plain = more.length === 0 && holdsOnly(element, PLAIN_NAME);
    if (plain && text(element, 'PersonName') === name) continue;
    bind(to, BLOCK, element, contributorKey({ role, name }));
    for (const each of more) cover(to, BLOCK, 'Contributor', contributorKey({ role: each, name }));
  }
}

/** Edition number, statement and large print (List 21 code LTE). */
export function readEdition(to: Reading, block: Element): void {
  const { edition, format } = to.product;
  edition.number = null;
  edition.statement = '';
  format.largePrint = false;
  for (const element of parts(block)) {
    const value = textOf(element).replace(/\s+/g, ' ');
    if (element.name === 'EditionType') {
      if (value === 'LTE') format.largePrint = true;
      else keep(to, BLOCK, element, value);
    } else if (element.name === 'EditionNumber') {
      if (edition.number === null && /^[1-9]\d{0,2}$/.test(value)) edition.number = Number(value);
      else keep(to, BLOCK, element);
    } else if (element.name === 'EditionStatement') {
      if (edition.statement === '' && value.length <= 20_000) {
        edition.statement = value;
        if (Object.keys(element.attributes).length > 0) bind(to, BLOCK, element, value);
      } else keep(to, BLOCK, element);
    }
  }
}
