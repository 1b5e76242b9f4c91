import { notificationType, publishingStatus } from '../../rules/onix/standings.ts';
import type { Items } from './items.ts';
import { descriptionKey } from './keys.ts';
import { type OnixHouse, type OnixRecord, onixDay } from './product.ts';
import { descriptionXml } from './xhtml.ts';
import type { XmlOut } from './xml-out.ts';

/** What decides how ONIX speaks of a record's life. */
export function lifeOf(record: OnixRecord) {
  const { form, publicationDate, onSaleDate } = record.format;
  const { standing, successor, otherFormat } = record;
  return { form, publicationDate, onSaleDate, standing, successor, otherFormat };
}

function identifier(out: XmlOut, type: string, isbn13: string): void {
  out.open('ProductIdentifier');
  out.leaf('ProductIDType', type);
  out.leaf('IDValue', isbn13);
  out.close('ProductIdentifier');
}

/** The head of a record. An ISBN goes out as GTIN-13 (03) and ISBN-13 (15), as the trade expects (List 5 notes). */
export function writeRecordHead(out: XmlOut, record: OnixRecord, house: OnixHouse, items: Items): void {
  items('RecordReference', () => out.leaf('RecordReference', `edition-ledger.${record.isbn13}`));
  items(
    'NotificationType',
    () => out.leaf('NotificationType', notificationType(lifeOf(record), house.today)),
    record.standing,
  );
  items('RecordSourceType', () => out.leaf('RecordSourceType', '01'));
  items('RecordSourceName', () => out.leaf('RecordSourceName', house.sender));
  for (const type of ['03', '15'])
    items('ProductIdentifier', () => identifier(out, type, record.isbn13), type);
}

/** Block 2: the description, open to every reader (List 154 code 00). */
export function writeCollateral(out: XmlOut, { edition }: OnixRecord, items: Items): void {
  if (edition.description.trim() === '') return;
  items(
    'TextContent',
    () => {
      const { xml, xhtml } = descriptionXml(edition.description);
      out.open('TextContent');
      out.leaf('TextType', '03');
      out.leaf('ContentAudience', '00');
      out.filled('Text', xml, xhtml ? ' textformat="05"' : ' textformat="06"');
      out.close('TextContent');
    },
    () => descriptionKey(edition.description),
  );
}

function publishingDate(out: XmlOut, role: string, day: string, items: Items): void {
  items(
    'PublishingDate',
    () => {
      out.open('PublishingDate');
      out.leaf('PublishingDateRole', role);
      out.leaf('Date', onixDay(day), ' dateformat="00"');
      out.close('PublishingDate');
    },
    () => `${role}|${day}`,
  );
}

/** Dates of List 163: 01 publication, 02 the first day of sale, 13 the day it went out of print. */
function dates(out: XmlOut, record: OnixRecord, house: OnixHouse, items: Items): void {
  // The notes on 01 and 03 of List 64: no publication date with a cancelled product.
  if (publishingStatus(lifeOf(record), house.today) === '01') return;
  const { publicationDate, onSaleDate } = record.format;
  if (publicationDate !== null) publishingDate(out, '01', publicationDate, items);
  if (onSaleDate !== null) publishingDate(out, '02', onSaleDate, items);
  if (record.endedOn !== null && record.standing === 'retired')
    publishingDate(out, '13', record.endedOn, items);
}

function territory(out: XmlOut, write: () => void): void {
  out.open('Territory');
  write();
  out.close('Territory');
}

/**
 * Where it may be sold: List 46 code 01 (for sale, on exclusive rights) and 03 (not for sale) side by side, so that no
 * country is left unsaid; 00 for the rest of the world where nothing was recorded.
 */
export function writeRights(out: XmlOut, { scope, countries }: OnixHouse['rights'], items: Items): void {
  const list = countries.join(' ');
  const rights = (type: string, write: () => void) =>
    items('SalesRights', () => {
      out.open('SalesRights');
      out.leaf('SalesRightsType', type);
      territory(out, write);
      out.close('SalesRights');
    });
  const world = (except: boolean) => () => {
    out.leaf('RegionsIncluded', 'WORLD');
    if (except) out.leaf('CountriesExcluded', list);
  };
  const those = () => out.leaf('CountriesIncluded', list);
  if (scope === 'world' || (scope === 'except' && countries.length === 0)) rights('01', world(false));
  if (countries.length === 0) return;
  if (scope === 'only') {
    rights('01', those);
    rights('03', world(true));
  } else if (scope === 'except') {
    rights('01', world(true));
    rights('03', those);
  }
}

/** Block 4: who publishes it, when and where. */
export function writePublishing(out: XmlOut, record: OnixRecord, house: OnixHouse, items: Items): void {
  const imprint = record.edition.imprint || house.publisher;
  if (imprint)
    items(
      'Imprint',
      () => {
        out.open('Imprint');
        out.leaf('ImprintName', imprint);
        out.close('Imprint');
      },
      imprint,
    );
  const publisher = house.publisher || imprint || house.sender;
  items(
    'Publisher',
    () => {
      out.open('Publisher');
      out.leaf('PublishingRole', '01');
      out.leaf('PublisherName', publisher);
      out.close('Publisher');
    },
    publisher,
  );
  if (house.country)
    items('CountryOfPublication', () => out.leaf('CountryOfPublication', house.country), house.country);
  const status = publishingStatus(lifeOf(record), house.today);
  items('PublishingStatus', () => out.leaf('PublishingStatus', status), record.standing);
  dates(out, record, house, items);
  writeRights(out, house.rights, items);
}

/** Block 5: its work, what it replaces and what it can be had as besides. */
export function writeRelated(out: XmlOut, record: OnixRecord, house: OnixHouse, items: Items): void {
  items(
    'RelatedWork',
    () => {
      out.open('RelatedWork');
      out.leaf('WorkRelationCode', '01');
      out.open('WorkIdentifier');
      out.leaf('WorkIDType', '01');
      out.leaf('IDTypeName', `${house.sender} works`);
      out.leaf('IDValue', String(record.workId));
      out.close('WorkIdentifier');
      out.close('RelatedWork');
    },
    'own',
  );
  for (const { codes, isbn13 } of record.related)
    items(
      'RelatedProduct',
      () => {
        out.open('RelatedProduct');
        for (const code of codes) out.leaf('ProductRelationCode', code);
        identifier(out, '03', isbn13);
        identifier(out, '15', isbn13);
        out.close('RelatedProduct');
      },
      isbn13,
    );
}
