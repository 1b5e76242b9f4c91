import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import bundled from '../../resources/isbn-ranges.json' with { type: 'json' };
import {
  messageDay,
  RangeMessageError,
  refuseOlder,
  writeRangeData,
} from '../../src/exchange/ranges/message.ts';
import { readRangeMessage } from '../../src/exchange/ranges/read.ts';

/** International ISBN Agency, range message of 22 Aug 2026 (STANDARDS A9, data/isbn). */
const FILE = new URL('../../../shared/data/isbn/RangeMessage-2026-08-22.xml', import.meta.url);
const present = existsSync(FILE);
if (!present) console.log(`skipped: ${FILE.pathname} is not there`);

describe.skipIf(!present)("the agency's range message", () => {
  it('becomes the bundled table, to the letter', () => {
    const data = readRangeMessage(readFileSync(FILE));
    expect(writeRangeData(data)).toBe(
      readFileSync(new URL('../../resources/isbn-ranges.json', import.meta.url), 'utf8'),
    );
    // The counts of STANDARDS A9.
    expect(data.groups).toHaveLength(287);
    expect(data.groups.filter(([name]) => name.startsWith('979'))).toHaveLength(5);
    const rules = data.groups.flatMap(([, , list]) => list);
    expect(rules).toHaveLength(1_858);
    expect(rules.filter(([, , length]) => length === 0)).toHaveLength(179);
    expect(data.date).toBe('2026-08-22');
  });
});

const owner = (name: string, prefix: string, rules: string): string =>
  `<${name}><Prefix>${prefix}</Prefix><Agency>A &amp; B</Agency><Rules>${rules}</Rules></${name}>`;
const rule = (range: string, length: string): string =>
  `<Rule><Range>${range}</Range><Length>${length}</Length></Rule>`;
const all = rule('0000000-9999999', '1');

interface Parts {
  head?: string;
  date?: string;
  prefixes?: string;
  groups?: string;
}

/** A small message; each part can be replaced. */
function message({ head = '<?xml version="1.0"?>', date, prefixes, groups }: Parts = {}): string {
  return `${head}<ISBNRangeMessage><MessageDate>${date ?? 'Sun, 23 Aug 2026 08:00:00 BST'}</MessageDate>
    <EAN.UCCPrefixes>${prefixes ?? owner('EAN.UCC', '978', all)}</EAN.UCCPrefixes>
    <RegistrationGroups>${groups ?? owner('Group', '978-0', rule('0000000-9999999', '2'))}</RegistrationGroups></ISBNRangeMessage>`;
}

const read = (xml: string): ReturnType<typeof readRangeMessage> =>
  readRangeMessage(new TextEncoder().encode(xml));

describe('readRangeMessage', () => {
  it('reads a message without serial number, source and DTD', () => {
    expect(read(message())).toEqual({
      source: 'International ISBN Agency',
      serial: null,
      issued: 'Sun, 23 Aug 2026 08:00:00 BST',
      date: '2026-08-23',
      prefixes: [['978', 'A & B', [[0, 9_999_999, 1]]]],
      groups: [['978-0', 'A & B', [[0, 9_999_999, 2]]]],
    });
  });

  it("accepts the agency's own DTD and comments", () => {
    const head =
      '<?xml version="1.0"?><!DOCTYPE ISBNRangeMessage [ <!ELEMENT Rule (Range, Length) > ]>\n<!-- a note -->';
    expect(read(message({ head })).groups).toHaveLength(1);
  });

  it.each<[string, string, RegExp]>([
    ['nothing', '', /no XML/],
    ['another text', '{"a": 1}', /no XML/],
    ['another document', '<html></html>', /holds '<html>/],
    ['half a message', message().slice(0, 200), /not well-formed/],
    ['no groups', message({ groups: '' }), /no range message/],
    [
      'a range of six digits',
      message({ groups: owner('Group', '978-0', rule('000000-9999999', '2')) }),
      /seven-digit/,
    ],
    [
      'a length of eight',
      message({ groups: owner('Group', '978-0', rule('0000000-9999999', '8')) }),
      /0 to 7/,
    ],
    ['another prefix', message({ prefixes: owner('EAN.UCC', '977', all) }), /no range message/],
    ['a group that is none', message({ groups: owner('Group', '978-a', all) }), /malformed at groups/],
    [
      'an overlap',
      message({
        groups: owner('Group', '978-0', rule('0000000-1999999', '2') + rule('1000000-2999999', '3')),
      }),
      /overlaps/,
    ],
    [
      'ranges out of order',
      message({
        groups: owner('Group', '978-0', rule('2000000-2999999', '3') + rule('0000000-1999999', '2')),
      }),
      /out of order/,
    ],
    [
      'a group length that disagrees',
      message({ groups: owner('Group', '978-00', all) }),
      /does not fit the group lengths/,
    ],
    ['a date that is none', message({ date: 'yesterday' }), /not a date/],
    ['a day no month has', message({ date: 'Mon, 31 Feb 2026 08:00:00 GMT' }), /not a date/],
    ['an entity', message({ head: '<!DOCTYPE ISBNRangeMessage [<!ENTITY a "aaaa">]>' }), /declares more/],
    [
      'a parameter entity',
      message({ head: '<!DOCTYPE ISBNRangeMessage [<!ENTITY % a SYSTEM "file:///x"> %a;]>' }),
      /declares more/,
    ],
    [
      'an outside DTD',
      message({ head: '<!DOCTYPE ISBNRangeMessage SYSTEM "http://127.0.0.1/x.dtd">' }),
      /declares more/,
    ],
    [
      'a second DTD',
      message({ head: '<!DOCTYPE ISBNRangeMessage []><!DOCTYPE ISBNRangeMessage [<!ENTITY a "b">]>' }),
      /no part of/,
    ],
    ['an entity in use', message().replace('A &amp; B', '&a;'), /uses entities/],
    ['a character entity', message().replace('A &amp; B', '&#65;'), /uses entities/],
    ['an attribute', message().replace('<Rule>', '<Rule a="b">'), /holds '<Rule a="b">/],
    ['character data', message().replace('A &amp; B', '<![CDATA[x]]>'), /no part of/],
    ['a processing instruction', message().replace('A &amp; B', '<?x y?>'), /no part of/],
    [
      'a polluting element',
      message().replace('<Agency>A &amp; B</Agency>', '<__proto__>x</__proto__>'),
      /no part of/,
    ],
    ['a deep nest', '<Rule>'.repeat(100_000), /deeper/],
    ['a very large file', ' '.repeat(5_000_000), /too large/],
  ])('refuses %s', (_, xml, reason) => {
    expect(() => read(xml)).toThrow(RangeMessageError);
    expect(() => read(xml)).toThrow(reason);
  });

  it('refuses bytes that are no UTF-8', () => {
    expect(() => readRangeMessage(Uint8Array.of(0x3c, 0xff, 0xfe))).toThrow(/not UTF-8/);
  });
});

describe('npm run ranges', () => {
  const run = (
    xml: string,
  ): { out: string; error: string; status: number | null; written: string | null } => {
    const folder = mkdtempSync(join(tmpdir(), 'ranges-'));
    const [input, output] = [join(folder, 'in.xml'), join(folder, 'out.json')];
    writeFileSync(input, xml);
    const generate = new URL('../../src/exchange/ranges/generate.ts', import.meta.url).pathname;
    const { stdout, stderr, status } = spawnSync(process.execPath, [generate, input, output], {
      encoding: 'utf8',
    });
    const written = existsSync(output) ? readFileSync(output, 'utf8') : null;
    rmSync(folder, { recursive: true });
    return { out: stdout, error: stderr, status, written };
  };

  it('writes a newer table, and leaves everything as it was for an older or broken message', () => {
    const newer = run(message({ date: 'Fri, 1 Jan 2100 08:00:00 GMT' }));
    expect(newer).toMatchObject({ status: 0, out: expect.stringMatching(/^1 groups of Fri, 1 Jan 2100/) });
    expect(JSON.parse(newer.written ?? '')).toMatchObject({
      date: '2100-01-01',
      groups: [['978-0', 'A & B', [[0, 9_999_999, 2]]]],
    });
    const older = run(message({ date: 'Fri, 1 Jan 2010 08:00:00 GMT' }));
    expect(older).toMatchObject({
      status: 1,
      written: null,
      error: expect.stringMatching(/older than the table/),
    });
    expect(run('<html>')).toMatchObject({
      status: 1,
      written: null,
      error: expect.stringMatching(/no part of/),
    });
  });
});

describe('a newer message', () => {
  it('replaces the table; an older one does not', () => {
    const later = { date: '2026-08-22', issued: 'Sat, 22 Aug 2026 18:00:00 BST' };
    const earlier = { date: '2026-08-22', issued: 'Sat, 22 Aug 2026 09:00:00 BST' };
    expect(() => refuseOlder(later, bundled)).not.toThrow();
    expect(() => refuseOlder(bundled, bundled)).not.toThrow();
    expect(() => refuseOlder(earlier, bundled)).toThrow(/older than the table in use/);
    expect(() =>
      refuseOlder({ date: '2017-12-01', issued: 'Fri, 1 Dec 2017 10:00:00 GMT' }, bundled),
    ).toThrow(RangeMessageError);
  });

  it('is dated by its date line', () => {
    expect(messageDay('Sat, 22 Aug 2026 17:51:37 BST')).toBe('2026-08-22');
    expect(messageDay('1 Jan 2027')).toBe('2027-01-01');
    for (const line of ['', 'Sat, 22 Aug', '22 Agu 2026', '2026-08-22']) expect(messageDay(line)).toBeNull();
  });
});
