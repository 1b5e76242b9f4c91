import type { EpubFacts } from '../../../contract/proof-checks/facts.ts';
import { tryIsbn } from '../../../rules/isbn/index.ts';
import { isbnsIn } from '../isbns.ts';
import type { Meta, Package } from './package.ts';
import { attribute } from './xml.ts';

type Metadata = Pick<
  EpubFacts,
  | 'version'
  | 'identifiers'
  | 'sources'
  | 'titles'
  | 'creators'
  | 'languages'
  | 'publishers'
  | 'date'
  | 'modified'
>;

const refined = (meta: Meta, property: string) => meta.refinements.find((one) => one.property === property);

/** Codes of ONIX List 5 for an ISBN: 15 and 02 as such, 03 the same digits as a GTIN-13 (EPUB 3.3, identifier-type). */
const ISBN_CODES = ['15', '02', '03'];

/** Whether an identifier is written or marked as an ISBN: `urn:isbn:` (RFC 8254), opf:scheme (EPUB 2), identifier-type. */
function claimsIsbn(meta: Meta): boolean {
  const type = refined(meta, 'identifier-type');
  const marked =
    type?.scheme === 'onix:codelist5' ? ISBN_CODES.includes(type.text) : /isbn/i.test(type?.text ?? '');
  return (
    marked ||
    /^(?:urn:)?isbn/i.test(meta.text) ||
    /^97[89][-\s0-9]{10,17}$/.test(meta.text) ||
    /isbn/i.test(attribute(meta.attributes, 'scheme') ?? '')
  );
}

function identifier(meta: Meta, uniqueId: string): EpubFacts['identifiers'][number] {
  const value = meta.text.slice(0, 500);
  const claims = claimsIsbn(meta);
  const read = claims ? (tryIsbn(value)?.isbn.isbn13 ?? isbnsIn(value)[0]?.isbn13 ?? null) : null;
  return {
    value,
    isbn13: read,
    claimsIsbn: claims,
    unique: uniqueId !== '' && attribute(meta.attributes, 'id')?.trim() === uniqueId,
  };
}

/** A role by its refinement (EPUB 3) or its attribute (EPUB 2), '' where none is given. */
function roleOf(meta: Meta): string {
  const role = refined(meta, 'role')?.text ?? attribute(meta.attributes, 'role') ?? '';
  return role.trim().slice(0, 20);
}

/** The date of publication: in EPUB 2 the one marked so, or the one that is marked as nothing else. */
function dateOf(dates: readonly Meta[]): string | null {
  const event = (meta: Meta) => attribute(meta.attributes, 'event')?.trim().toLowerCase() ?? '';
  const chosen =
    dates.find((meta) => event(meta) === 'publication') ??
    dates.find((meta) => event(meta) === '' && refined(meta, 'event') === undefined);
  return chosen?.text.slice(0, 100) || null;
}

/** What the package says of the book (EPUB 3.3 section 5.5, Dublin Core elements and their refinements; OPF 2.0.1). */
export function metadataOf(found: Package): Metadata {
  const all = (name: string) => found.metadata.filter((meta) => meta.name === name && meta.text !== '');
  const texts = (name: string, most: number) => all(name).map(({ text }) => text.slice(0, most));
  const people = (name: 'creator' | 'contributor') =>
    all(name)
      .slice(0, 150)
      .map((meta) => ({
        name: meta.text.slice(0, 500),
        role: roleOf(meta),
        contributor: name === 'contributor',
      }));
  return {
    version: found.version.slice(0, 10),
    identifiers: all('identifier')
      .slice(0, 100)
      .map((meta) => identifier(meta, found.uniqueId)),
    sources: texts('source', 500).slice(0, 100),
    titles: all('title')
      .slice(0, 50)
      .map((meta) => ({
        text: meta.text.slice(0, 1_000),
        kind: (refined(meta, 'title-type')?.text ?? '').toLowerCase().slice(0, 40),
      })),
    creators: [...people('creator'), ...people('contributor')],
    languages: texts('language', 50).slice(0, 50),
    publishers: texts('publisher', 500).slice(0, 50),
    date: dateOf(all('date')),
    modified: (found.properties.get('dcterms:modified')?.[0] ?? '').slice(0, 100) || null,
  };
}
