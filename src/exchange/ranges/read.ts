import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { z } from 'zod';
import { checkRangeData, type RangeData, RangeTableError } from '../../rules/isbn/range-data.ts';
import { messageDay, RangeMessageError } from './message.ts';
import { plainBody } from './safe-xml.ts';

const filled = z.string().trim().min(1);
const rule = z.object({
  Range: z.string().regex(/^[0-9]{7}-[0-9]{7}$/, { error: 'must be two seven-digit values' }),
  Length: z.string().regex(/^[0-7]$/, { error: 'must be a digit from 0 to 7' }),
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
    'EAN.UCCPrefixes': z.object({
      'EAN.UCC': z.array(owner.extend({ Prefix: z.enum(['978', '979']) })).min(1),
    }),
    RegistrationGroups: z.object({ Group: z.array(owner).min(1) }),
  }),
});

/**
 * Reads the agency's range message (STANDARDS A9), UTF-8 XML, into the JSON form of the range table and checks that
 * the ranges hold together. Throws RangeMessageError, one sentence, for anything malformed or hostile.
 */
export function readRangeMessage(bytes: Uint8Array): RangeData {
  const body = plainBody(bytes);
  const sound = XMLValidator.validate(body);
  if (sound !== true)
    throw new RangeMessageError(
      `The file is not well-formed XML near line ${sound.err.line}: download it again.`,
    );
  const parser = new XMLParser({
    parseTagValue: false,
    ignoreAttributes: true,
    isArray: (name) => name === 'Rule' || name === 'Group' || name === 'EAN.UCC',
  });
  const parsed = message.safeParse(parser.parse(body));
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new RangeMessageError(
      `The file is no range message: ${issue?.path.join('/')}: ${issue?.message ?? 'unreadable'}.`,
    );
  }
  return held(toRangeData(parsed.data.ISBNRangeMessage));
}

/** The table's own checks, with their sentence passed on as the message's fault. */
function held(data: RangeData): RangeData {
  try {
    return checkRangeData(data);
  } catch (error) {
    if (error instanceof RangeTableError) throw new RangeMessageError(error.message);
    throw error;
  }
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
    prefixes: read['EAN.UCCPrefixes']['EAN.UCC'].map((of) => [of.Prefix, of.Agency, rules(of)]),
    groups: read.RegistrationGroups.Group.map((of) => [of.Prefix, of.Agency, rules(of)]),
  };
}
