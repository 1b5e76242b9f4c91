import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { z } from 'zod';
import type { RangeData } from '../../rules/isbn/range-table.ts';

/** The agency's file is about 225 kB; twenty times that is no range message. */
const MAX_BYTES = 4_500_000;

const filled = z.string().trim().min(1);
const rule = z.object({
  Range: z.string().regex(/^[0-9]{7}-[0-9]{7}$/),
  Length: z.string().regex(/^[0-7]$/),
});
const owner = z.object({
  Prefix: filled,
  Agency: filled,
  Rules: z.object({ Rule: z.array(rule).min(1) }),
});
const message = z.object({
  ISBNRangeMessage: z.object({
    MessageSource: filled.optional(),
    MessageSerialNumber: filled.optional(),
    MessageDate: filled,
    'EAN.UCCPrefixes': z.object({ 'EAN.UCC': z.array(owner).min(1) }),
    RegistrationGroups: z.object({ Group: z.array(owner).min(1) }),
  }),
});

/** Thrown for a file that is no usable range message; the message is one sentence. */
export class RangeMessageError extends Error {
  override readonly name = 'RangeMessageError';
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The day of a date line like 'Sat, 22 Aug 2026 17:51:37 BST' as YYYY-MM-DD; null where it is none. */
export function messageDay(line: string): string | null {
  const found = /^(?:[A-Z][a-z]{2}, )?([0-9]{1,2}) ([A-Z][a-z]{2}) ([0-9]{4})(?: |$)/.exec(line);
  const month = MONTHS.indexOf(found?.[2] ?? '') + 1;
  if (found === null || month === 0) return null;
  const day = `${found[3]}-${String(month).padStart(2, '0')}-${String(found[1]).padStart(2, '0')}`;
  return z.iso.date().safeParse(day).success ? day : null;
}

/**
 * Reads the agency's range message (STANDARDS A9) into the JSON form of the range table.
 * Throws RangeMessageError; the ranges themselves are judged by loadRangeTable.
 */
export function readRangeMessage(xml: string): RangeData {
  if (xml.length > MAX_BYTES) throw new RangeMessageError('The file is too large to be a range message.');
  const body = withoutElementDeclarations(xml);
  if (XMLValidator.validate(body) !== true)
    throw new RangeMessageError('The file is not well-formed XML: download it again.');
  const parser = new XMLParser({
    parseTagValue: false,
    processEntities: false,
    ignoreAttributes: true,
    isArray: (name) => name === 'Rule' || name === 'Group' || name === 'EAN.UCC',
  });
  const parsed = message.safeParse(parser.parse(body));
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new RangeMessageError(`The file is no range message: ${issue?.path.join('/')} ${issue?.message}.`);
  }
  return toRangeData(parsed.data.ISBNRangeMessage);
}

/** Takes off the message's own internal DTD, which may only declare elements: entities and outside files are refused. */
function withoutElementDeclarations(xml: string): string {
  const start = xml.indexOf('<!DOCTYPE');
  if (start < 0) return xml;
  const found = /^<!DOCTYPE\s+ISBNRangeMessage\s*\[((?:\s|<!ELEMENT [^<>&%]*>)*)\]>/.exec(
    xml.slice(start, start + 20_000),
  );
  if (found === null)
    throw new RangeMessageError(
      'The file declares more than its own elements, which a range message does not do.',
    );
  return xml.slice(0, start) + xml.slice(start + found[0].length);
}

function toRangeData(read: z.infer<typeof message>['ISBNRangeMessage']): RangeData {
  const date = messageDay(read.MessageDate);
  if (date === null) throw new RangeMessageError(`The message date '${read.MessageDate}' is not a date.`);
  const rules = (of: z.infer<typeof owner>): RangeData['groups'][number][2] =>
    of.Rules.Rule.map(({ Range, Length }) => [
      Number(Range.slice(0, 7)),
      Number(Range.slice(8)),
      Number(Length),
    ]);
  return {
    source: read.MessageSource ?? 'International ISBN Agency',
    serial: read.MessageSerialNumber ?? null,
    issued: read.MessageDate,
    date,
    prefixes: read['EAN.UCCPrefixes']['EAN.UCC'].map((of) => [
      of.Prefix as '978' | '979',
      of.Agency,
      rules(of),
    ]),
    groups: read.RegistrationGroups.Group.map((of) => [of.Prefix, of.Agency, rules(of)]),
  };
}

/** The text of resources/isbn-ranges.json: one prefix or group a line, so that a newer table shows as a small difference. */
export function writeRangeData(data: RangeData): string {
  const lines = (list: readonly unknown[]): string => list.map((entry) => JSON.stringify(entry)).join(',\n');
  const head = { source: data.source, serial: data.serial, issued: data.issued, date: data.date };
  const fields = Object.entries(head).map(([name, value]) => `"${name}": ${JSON.stringify(value)},`);
  return `{\n${fields.join('\n')}\n"prefixes": [\n${lines(data.prefixes)}\n],\n"groups": [\n${lines(data.groups)}\n]\n}\n`;
}
