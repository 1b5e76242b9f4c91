import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextInput, proposeNext } from '../../renderer/screens/work/edition/next-edition-draft.ts';
import { splitKeywords } from '../../renderer/screens/work/edition/split-keywords.ts';
import {
  changeForm,
  draftOf,
  type FormatDraft,
  filledPrices,
} from '../../renderer/screens/work/format/draft.ts';
import { mailAddress } from '../../renderer/screens/work/listing/mail-address.ts';
import { reachable, wayOf } from '../../renderer/screens/work/listing/reach.ts';
import { blankEdition, blankFormat } from '../../renderer/screens/work/parts/blanks.ts';
import { errorsOf, errorWithin } from '../../renderer/screens/work/parts/refusals.ts';
import { CallRefused } from '../../renderer/transport.ts';
import type { Edition } from '../../src/contract/editions.ts';
import type { Listing } from '../../src/contract/listings.ts';
import { LISTING_STANDINGS } from '../../src/contract/terms.ts';
import { nextSteps, wayTo } from '../../src/rules/standings.ts';

const listingAt = (standing: Listing['standing']) =>
  ({ standing, next: nextSteps(standing) }) as unknown as Listing;

describe('the moves that the Work screen offers', () => {
  it('are those that the rules allow, by the same way', () => {
    for (const from of LISTING_STANDINGS) {
      const listing = listingAt(from);
      const allowed = LISTING_STANDINGS.filter((to) => wayTo(from, to) !== null);
      expect(new Set(reachable(listing)), from).toEqual(new Set(allowed));
      for (const to of allowed) expect(wayOf(listing, to), `${from} to ${to}`).toEqual(wayTo(from, to));
    }
  });
});

describe('pasted keywords', () => {
  it('are parted by semicolons, commas and new lines, each once and in order', () => {
    expect(splitKeywords('salt marsh; almanac,\n family  secrets\n\nalmanac;')).toEqual([
      'salt marsh',
      'almanac',
      'family secrets',
    ]);
  });

  it('come out the same however they were parted', () => {
    const word = fc.stringMatching(/^[a-z]{1,8}( [a-z]{1,8})?$/);
    fc.assert(
      fc.property(fc.uniqueArray(word), fc.constantFrom(';', ', ', '\n', ' ;\r\n'), (words, sign) => {
        expect(splitKeywords(words.join(sign))).toEqual(words);
      }),
    );
  });
});

describe('a format whose form changes while it is typed', () => {
  const change = (draft: FormatDraft, code: string): FormatDraft => {
    let now = draft;
    const merge = (fields: Partial<FormatDraft>) => {
      now = { ...now, ...fields };
    };
    changeForm({ draft, merge, set: () => {}, changes: () => ({}), dirty: false }, code);
    return now;
  };
  const printed = draftOf({
    ...blankFormat('BB'),
    caseKind: 'jacket',
    pages: 288,
    trimWidthUm: 129_000,
    trimHeightUm: 198_000,
    finish: 'matte',
    largePrint: true,
    prices: [{ amountMinor: 999, currency: 'GBP', tax: 'including' }],
  });

  it('keeps what both printed forms share and loses the kind of case', () => {
    expect(change(printed, 'BC')).toMatchObject({ form: 'BC', caseKind: null, pages: 288, finish: 'matte' });
  });

  it('loses paper, trim and cover as an e-book, and keeps its prices', () => {
    const book = change(printed, 'ED');
    expect({ ...book, prices: [] }).toEqual({ ...draftOf(blankFormat('ED')) });
    expect(filledPrices(book.prices)).toEqual([{ amountMinor: 999, currency: 'GBP', tax: 'including' }]);
  });
});

describe('the next edition', () => {
  const contributors = [{ role: 'A01', name: 'Maren Oskarsdal' }];
  const edition = {
    ...blankEdition({ title: 'The Salt Almanac', language: 'eng', imprint: 'Halyard & Fen' }),
    contributors,
    id: 7,
    formats: [
      { id: 1, standing: 'live' },
      { id: 2, standing: 'retired' },
      { id: 3, standing: 'cancelled' },
    ],
  } as unknown as Edition;

  it('proposes the formats that are still running, with numbers and no change', () => {
    expect(nextInput(edition, proposeNext(edition))).toEqual({
      editionId: 7,
      carry: [1],
      add: [],
      takeNumbers: true,
      carryListings: true,
      changes: {},
    });
  });

  it('sends only what was changed, without rows that name nobody', () => {
    const foreword = { role: 'A23', name: 'Tobias Wrenfield' };
    const draft = {
      ...proposeNext(edition),
      statement: 'With a new foreword',
      contributors: [...contributors, foreword, { role: '', name: ' ' }],
      add: [{ key: 0, form: '', formDetail: null, caseKind: null, largePrint: false }],
    };
    expect(nextInput(edition, draft)).toMatchObject({
      add: [],
      changes: { statement: 'With a new foreword', contributors: [...contributors, foreword] },
    });
    expect(nextInput(edition, draft).changes).not.toHaveProperty('subtitle');
  });
});

describe('the address that opens the mail program', () => {
  it('carries subject and text whole (RFC 6068)', () => {
    const request = { to: 'titles@printworks-direct.example', subject: 'Salt & Sea?', text: 'One\nTwo #3' };
    const address = new URL(mailAddress(request) ?? '');
    expect(decodeURIComponent(address.pathname)).toBe(request.to);
    expect(address.href).toContain('subject=Salt%20%26%20Sea%3F&body=One%0D%0ATwo%20%233');
  });

  it('is not offered where requests go to a web page', () => {
    expect(mailAddress({ to: 'https://help.example/remove', subject: '', text: '' })).toBeUndefined();
    expect(mailAddress({ to: '', subject: '', text: '' })).toBeUndefined();
  });
});

describe('a refusal beside its input', () => {
  const refusal = new CallRefused({
    code: 'BAD_INPUT',
    message: 'changes.contributors.1.role: Choose a role.',
    field: 'changes.contributors.1.role',
  });

  it('leaves the path out and goes to that input alone', () => {
    const errorOf = errorsOf(refusal, 'changes.');
    expect(errorOf('contributors.1.role')).toBe('Choose a role.');
    expect(errorOf('contributors.0.role')).toBeUndefined();
  });

  it('is found under the list it belongs to', () => {
    expect(errorWithin(refusal, 'changes')).toBe('Choose a role.');
    expect(errorWithin(refusal, 'carry')).toBeUndefined();
  });
});
