import type { OnixVersion, TagSet } from '../../contract/onix.ts';
import type { Block, KeptPart } from '../../rules/onix/products.ts';
import { fitted } from './fit.ts';
import { writeParts } from './items.ts';
import { mendedSupplies } from './mend-supply.ts';
import { type OnixHouse, type OnixRecord, onixDay } from './product.ts';
import { writeDescriptive } from './write-descriptive.ts';
import { writeCollateral, writePublishing, writeRecordHead, writeRelated } from './write-publishing.ts';
import { writeSupply } from './write-supply.ts';
import { type XmlOut, xmlOut } from './xml-out.ts';

export interface MessageTerms {
  version: OnixVersion;
  tags: TagSet;
  /** `registration` leaves out what an ISBN agency does not register (STANDARDS.md section A12). */
  content: 'full' | 'registration';
}

const root = (tags: TagSet) => (tags === 'reference' ? 'ONIXMessage' : 'ONIXmessage');

/** The beginning of a message with its header. */
export function messageHead(terms: MessageTerms, house: OnixHouse): string {
  const out = xmlOut(terms.tags);
  out.raw('<?xml version="1.0" encoding="UTF-8"?>\n');
  out.raw(`<${root(terms.tags)} release="${terms.version}"`);
  out.raw(` xmlns="http://ns.editeur.org/onix/${terms.version}/${terms.tags}">\n`);
  out.open('Header');
  out.open('Sender');
  out.leaf('SenderName', house.sender);
  out.close('Sender');
  out.leaf('SentDateTime', onixDay(house.today));
  if (house.demo)
    out.leaf('MessageNote', 'Demo catalogue: its numbers are invented and must never be printed or traded.');
  out.close('Header');
  return out.take();
}

/** The end of a message; one without products says so. */
export function messageTail(terms: MessageTerms, products: number): string {
  const out = xmlOut(terms.tags);
  if (products === 0) out.empty('NoProduct');
  return `${out.take()}</${root(terms.tags)}>\n`;
}

function block(
  out: XmlOut,
  name: Block,
  kept: readonly KeptPart[],
  write: Parameters<typeof writeParts>[3],
): void {
  const before = out.take();
  writeParts(out, name, kept.length > 0 ? kept.filter((part) => part.place === name) : kept, write);
  const inside = out.take();
  out.raw(before);
  if (inside === '') return;
  out.open(name);
  out.raw(inside);
  out.close(name);
}

/** Writes one product record. */
export function writeProduct(out: XmlOut, terms: MessageTerms, house: OnixHouse, record: OnixRecord): void {
  const full = terms.content === 'full';
  const fit = full ? record.kept.map((part) => fitted(part, terms.version)) : [];
  const kept = fit.filter((part) => part !== null);
  const supplies = kept.some((part) => part.name === 'ProductSupply')
    ? mendedSupplies({ ...record, kept }, house)
    : [];
  const own = kept.filter((part) => part.place === 'Product' && part.name !== 'ProductSupply');
  out.open('Product');
  writeParts(out, 'Product', [...own, ...supplies], (items) => {
    writeRecordHead(out, record, house, items);
    items('DescriptiveDetail', () =>
      block(out, 'DescriptiveDetail', kept, (inner) => writeDescriptive(out, record, house, full, inner)),
    );
    if (full)
      items('CollateralDetail', () =>
        block(out, 'CollateralDetail', kept, (inner) => writeCollateral(out, record, inner)),
      );
    items('PublishingDetail', () =>
      block(out, 'PublishingDetail', kept, (inner) => writePublishing(out, record, house, inner)),
    );
    if (!full) return;
    items('RelatedMaterial', () =>
      block(out, 'RelatedMaterial', kept, (inner) => writeRelated(out, record, house, inner)),
    );
    items('ProductSupply', () => writeSupply(out, record, house));
  });
  out.close('Product');
}
