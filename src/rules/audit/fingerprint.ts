import { sha256 } from '@noble/hashes/sha2';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils';
import type { Facts } from './facts.ts';
import { indexOf } from './lookup.ts';
import type { Found, Rule } from './rule.ts';

const LENGTH = 32;

/**
 * What a finding is known by as long as its facts stay as they are: the rule and its sentence, what was said (which
 * names every fact the rule compared) and where the format, the listing and the number it is about stand. A finding
 * that was accepted comes back under another fingerprint once one of these has changed.
 */
export function fingerprintOf(rule: Rule, found: Found, facts: Facts): string {
  const index = indexOf(facts);
  const format = found.formatId === null ? undefined : index.formats.get(found.formatId);
  const listing = found.listingId === null ? undefined : index.listings.get(found.listingId);
  const basis = [
    rule.id,
    rule.sentence,
    rule.severity,
    found,
    format?.standing ?? null,
    format?.number?.standing ?? null,
    listing?.standing ?? null,
    listing?.lastStepOn ?? null,
  ];
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify(basis)))).slice(0, LENGTH);
}
