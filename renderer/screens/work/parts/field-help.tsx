import type { ReactNode } from 'react';
import { type Cited, citedText } from '../../help/sources.ts';

interface Ruled {
  says: string;
  sources: readonly Cited[];
}

/** What the rules say about the fields by which a book is known, each with what it rests on. */
export const FIELD_RULES = {
  title: {
    says: 'As it stands on the title page. Another title makes another book, with a number of its own.',
    sources: [['M6', 'section 5.2']],
  },
  subtitle: {
    says: 'Counts like the title: with another subtitle the book takes a number of its own.',
    sources: [['M6', 'section 5.2']],
  },
  contributors: {
    says: 'Everybody in the order of the title page, each with a role.',
    sources: [['ONIX', 'List 17']],
  },
  number: {
    says: 'A first edition may leave it empty. A text that changes significantly is a new edition; an unchanged reprint is not.',
    sources: [
      ['M4', 'section 5.1'],
      ['M6', 'section 5.2'],
    ],
  },
  statement: {
    says: 'As printed on the back of the title page, such as: Second edition, with a new foreword.',
    sources: [['M4', 'sections 5.2 and 5.3']],
  },
  language: {
    says: 'The language of the text. A translation is another book, with a number of its own.',
    sources: [['FAQ']],
  },
  imprint: {
    says: 'The name on the title page. Under another imprint the book takes a number of its own.',
    sources: [['M6', 'section 5.2']],
  },
  form: {
    says: 'Each product form, and each file format of an e-book, takes a number of its own.',
    sources: [['M6', 'section 5.2'], ['E_BOOKS']],
  },
  isbn: {
    says: 'Once given it is never given again, not even when the book never came out.',
    sources: [
      ['M4', 'section 5.13'],
      ['M7', 'section 7.8'],
    ],
  },
  publicationDate: {
    says: 'The nominal day; without an on-sale date shops may sell as soon as copies arrive.',
    sources: [['ONIX', 'List 163, role 01']],
  },
  onSaleDate: {
    says: 'From this day on it may be sold; before it nothing is sold or delivered.',
    sources: [['ONIX', 'List 163, role 02']],
  },
} as const satisfies Record<string, Ruled>;

/** The help under such a field: a sentence, and in small what it rests on; `more` is about the input itself. */
export function fieldHelp(field: keyof typeof FIELD_RULES, more?: string): ReactNode {
  const { says, sources } = FIELD_RULES[field];
  return (
    <>
      {says}
      {more === undefined ? '' : ` ${more}`} <span className="field-source">{citedText(sources)}</span>
    </>
  );
}
