import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EDITION_CHANGES, type EditionChange, TEXT_EXTENTS } from '../../../src/contract/edition-advice.ts';
import {
  type AdvisedFormat,
  adviseFormats,
  type Change,
  textChange,
} from '../../../src/rules/edition-advice/advise.ts';
import { ruleOn } from '../../../src/rules/edition-advice/index.ts';

const FORMATS: AdvisedFormat[] = [
  { id: 1, name: 'Paperback', made: 'print', hyphenated: '979-8-969999-00-8' },
  { id: 2, name: 'Hardcover', made: 'print', hyphenated: '979-8-969999-01-5' },
  { id: 3, name: 'E-book (EPUB)', made: 'e-book', hyphenated: '979-8-969999-02-2' },
  { id: 4, name: 'Audiobook download', made: 'audio', hyphenated: null },
];

const stated = (change: EditionChange, formatIds: number[] | null = null): Change => ({
  change,
  formatIds,
  detail: '',
  told: 'stated',
});
const anyChange = fc
  .tuple(
    fc.constantFrom(...EDITION_CHANGES),
    fc.option(fc.subarray([1, 2, 3, 4], { minLength: 1 }), { nil: null }),
  )
  .map(([change, ids]) => stated(change, ids));
const anyChanges = fc.array(anyChange, { maxLength: 12 });
const wish = fc.constantFrom('new' as const, 'keep' as const, null);

const verdicts = (changes: readonly Change[]) =>
  adviseFormats(FORMATS, changes, null)
    .slice(0, FORMATS.length)
    .map((format) => format.verdict);

describe('the advice', () => {
  it('never asks for a new number for price, cover, channel, paper, data or copy protection alone, in any mixture', () => {
    const harmless: EditionChange[] = [
      'price',
      'cover',
      'price-model',
      'channel',
      'paper',
      'data',
      'drm',
      'trim-shaved',
      'marketing',
      'text-corrections',
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...harmless)), (changes) => {
        expect(verdicts(changes.map((change) => stated(change)))).toEqual(['same', 'same', 'same', 'same']);
      }),
    );
  });

  it('never turns a required number into a kept one by a further change, nor a call of one’s own into keeping', () => {
    const grave = { same: 0, judge: 1, new: 2 };
    fc.assert(
      fc.property(anyChanges, anyChange, (changes, further) => {
        const before = verdicts(changes);
        const after = verdicts([...changes, further]);
        for (const [index, verdict] of before.entries())
          expect(grave[after[index] ?? 'same']).toBeGreaterThanOrEqual(grave[verdict]);
      }),
    );
  });

  it('never becomes milder when the text changes further', () => {
    const grave = { same: 0, judge: 1, new: 2 };
    fc.assert(
      fc.property(anyChanges, (changes) => {
        const each = TEXT_EXTENTS.map((extent) => verdicts([...changes, ...textChange(extent)]));
        for (let at = 1; at < each.length; at += 1)
          for (const [index, verdict] of (each[at] ?? []).entries())
            expect(grave[verdict]).toBeGreaterThanOrEqual(grave[each[at - 1]?.[index] ?? 'same']);
      }),
    );
  });

  it('does not hang on the order in which changes are told', () => {
    fc.assert(
      fc.property(anyChanges, (changes) => {
        expect(verdicts(changes.toReversed())).toEqual(verdicts(changes));
      }),
    );
  });

  it('gives each format a reason: at least one line, each change once, the gravest first, all bearing on it', () => {
    fc.assert(
      fc.property(anyChanges, wish, (changes, wished) => {
        for (const format of adviseFormats(FORMATS, changes, wished)) {
          expect(format.lines.length).toBeGreaterThan(0);
          expect(format.lines[0]?.verdict).toBe(format.verdict);
          expect(new Set(format.lines.map((line) => line.change)).size).toBe(format.lines.length);
          const made = FORMATS.find((one) => one.id === format.formatId)?.made;
          for (const line of format.lines)
            if (made !== undefined) expect(ruleOn(line.change).concerns).toContain(made);
        }
      }),
    );
  });

  it('refuses a wish only against the rules, and says why with the source', () => {
    fc.assert(
      fc.property(anyChanges, fc.constantFrom('new' as const, 'keep' as const), (changes, wished) => {
        for (const format of adviseFormats(FORMATS, changes, wished).slice(0, FORMATS.length)) {
          const granted = { new: wished === 'new', same: wished === 'keep', judge: null }[format.verdict];
          expect(format.answer?.granted).toBe(granted);
          expect(format.answer?.sentence.length).toBeGreaterThan(20);
          expect(format.answer?.source).not.toBe('');
        }
      }),
    );
  });

  it('binds what comes out beside by its own rule and leaves the formats alone', () => {
    const [paperback, ...rest] = adviseFormats(FORMATS, [stated('set'), stated('price')], null);
    expect(paperback?.verdict).toBe('same');
    expect(rest.at(-1)).toMatchObject({ name: 'The set', formatId: null, verdict: 'new' });
  });

  it('binds an added form by its form alone', () => {
    const added: AdvisedFormat = {
      id: null,
      name: 'Hardcover',
      made: 'print',
      hyphenated: null,
      addedBy: 'form',
    };
    const advice = adviseFormats([...FORMATS, added], [stated('cover')], 'keep');
    expect(advice.at(-1)).toMatchObject({ verdict: 'new', answer: null });
    expect(advice.slice(0, 4).every((format) => format.verdict === 'same')).toBe(true);
  });
});
