import { RangeMessageError } from './message.ts';

/** The agency's file is about 225 kB; twenty times that is no range message. */
const MAX_BYTES = 4_500_000;
const MAX_DEPTH = 8;
const DOCTYPE = /^<!DOCTYPE\s+ISBNRangeMessage\s*\[(?:\s|<!ELEMENT [^<>&%]{1,300}>){0,200}\]\s*>/;
const TAG =
  /<(\/?)(?:ISBNRangeMessage|Message(?:Source|SerialNumber|Date)|EAN\.UCC(?:Prefixes)?|RegistrationGroups|Group|Rules?|Prefix|Agency|Range|Length)\s*>/g;

/**
 * The elements of a range message, without declaration, internal DTD and comments. The DTD may only declare elements, as
 * the agency's own does; entities, outside files, attributes and unknown elements are refused before any XML library
 * sees the text. Throws RangeMessageError.
 */
export function plainBody(bytes: Uint8Array): string {
  if (bytes.length > MAX_BYTES) throw new RangeMessageError('The file is too large to be a range message.');
  const text = decode(bytes)
    .replace(/^\s*<\?xml [^<>]*\?>/, '')
    .replace(/<!--[^<>]*-->/g, '');
  const start = text.indexOf('<!DOCTYPE');
  const doctype = start < 0 ? '' : DOCTYPE.exec(text.slice(start, start + 50_000))?.[0];
  if (doctype === undefined)
    throw new RangeMessageError(
      'The file declares more than the elements of a range message; it was not read.',
    );
  const body = start < 0 ? text : text.slice(0, start) + text.slice(start + doctype.length);
  refuseOtherMarkup(body);
  if (/&(?!(?:amp|lt|gt|quot|apos);)/.test(body))
    throw new RangeMessageError('The file uses entities, which a range message does not; it was not read.');
  return body;
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new RangeMessageError('The file is not UTF-8 text, as a range message is.');
  }
}

function refuseOtherMarkup(body: string): void {
  let depth = 0;
  let end = 0;
  for (const tag of body.matchAll(TAG)) {
    if (body.slice(end, tag.index).includes('<')) break;
    end = tag.index + tag[0].length;
    depth += tag[1] === '/' ? -1 : 1;
    if (depth > MAX_DEPTH)
      throw new RangeMessageError('The file nests elements deeper than a range message does.');
  }
  if (end === 0 && !body.includes('<'))
    throw new RangeMessageError('The file is no range message: it holds no XML.');
  const other = body.slice(end).indexOf('<');
  if (other >= 0) {
    const found = body.slice(end + other, end + other + 40).split('\n', 1)[0];
    throw new RangeMessageError(`The file holds '${found}', which is no part of a range message.`);
  }
}
