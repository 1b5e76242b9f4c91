/** Kinds of text that the program fills in. */
export const TEXT_KINDS = ['removal request', 'chase', 'moved notice', 'copyright page'] as const;
export type TextKind = (typeof TEXT_KINDS)[number];

/** A word in braces that is filled in: what it stands for, and the demo press's words for an example. */
interface Placeholder {
  readonly name: string;
  readonly means: string;
  readonly example: string;
}

interface TextKindFacts {
  readonly name: string;
  readonly purpose: string;
  readonly placeholders: readonly Placeholder[];
  /** Our own subject; empty for a text that is not sent to anybody. */
  readonly subject: string;
  readonly body: string;
  /** What becomes of a fact that is not known: a dash, or its line is left out where nothing in it is known. */
  readonly unknown: 'dash' | 'line left out';
}

const OLD_FORMAT = [
  { name: 'title', means: 'title of the edition', example: 'The Salt Almanac' },
  { name: 'edition', means: 'its edition statement', example: '1st edition' },
  { name: 'form', means: 'what it is: paperback, e-book…', example: 'Paperback' },
  { name: 'isbn', means: 'its ISBN, hyphenated', example: '979-8-969999-00-8' },
  { name: 'replacement', means: 'ISBN of the format that takes its place', example: '979-8-969999-05-3' },
  { name: 'channel', means: 'name of the channel', example: 'Broadside Wholesale' },
  { name: 'publisher', means: 'your press', example: 'Halyard & Fen' },
  { name: 'date', means: 'the day the text is made', example: '2026-03-02' },
] as const;

const REMOVAL = {
  name: 'Removal request',
  purpose: 'Asks a channel to stop selling a format. A channel can have a text of its own.',
  placeholders: OLD_FORMAT,
  subject: 'Please stop selling: {title}, {edition}, {form}, {isbn}',
  body: [
    'To {channel}',
    '',
    'Please stop selling this edition and confirm when it no longer shows:',
    '',
    '{title}',
    'Edition: {edition}',
    'Form: {form}',
    'ISBN: {isbn}',
    'Replaced by: {replacement}',
    '',
    'Asked on {date} by {publisher}',
  ].join('\n'),
  unknown: 'dash',
} as const;

const CHASE = {
  name: 'Reminder',
  purpose: 'Asks again when a channel has not answered a removal request.',
  placeholders: [
    ...OLD_FORMAT,
    { name: 'asked', means: 'the day the channel was asked', example: '2026-02-16' },
    { name: 'promised', means: 'the day by which it promises an answer', example: '2026-02-23' },
  ],
  subject: 'Still for sale: {title}, {edition}, {form}, {isbn}',
  body: [
    'To {channel}',
    '',
    'On {asked} we asked you to stop selling the edition below. We counted on it being gone by {promised}, and it still shows for sale:',
    '',
    '{title}',
    'Edition: {edition}',
    'Form: {form}',
    'ISBN: {isbn}',
    'Replaced by: {replacement}',
    '',
    'Please take it off sale and tell us when that is done.',
    '',
    '{publisher}, {date}',
  ].join('\n'),
  unknown: 'dash',
} as const;

const MOVED = {
  name: 'Moved notice',
  purpose: 'Says what took the place of a format: for your website, for links, and to ask that reviews move.',
  placeholders: [
    { name: 'title', means: 'title of the old edition', example: 'The Salt Almanac' },
    { name: 'edition', means: 'its edition statement', example: '1st edition' },
    { name: 'form', means: 'what it is: paperback, e-book…', example: 'Paperback' },
    { name: 'isbn', means: 'its ISBN, hyphenated', example: '979-8-969999-00-8' },
    { name: 'newTitle', means: 'title of the edition that took its place', example: 'The Salt Almanac' },
    { name: 'newEdition', means: 'the edition statement of that one', example: '2nd edition' },
    { name: 'newForm', means: 'the form of that one', example: 'Paperback' },
    { name: 'replacement', means: 'the ISBN of that one', example: '979-8-969999-05-3' },
    { name: 'publisher', means: 'your press', example: 'Halyard & Fen' },
    { name: 'date', means: 'the day the text is made', example: '2026-03-02' },
  ],
  subject: 'A new edition takes the place of {title}, {edition}, {isbn}',
  body: [
    '{title}, {edition} ({form}, ISBN {isbn}) is no longer sold.',
    '',
    'It is replaced by {newTitle}, {newEdition} ({newForm}, ISBN {replacement}).',
    '',
    'Please point links and listings to the new ISBN, and carry reviews over where you can.',
    '',
    '{publisher}, {date}',
  ].join('\n'),
  unknown: 'dash',
} as const;

const COPYRIGHT_PAGE = {
  name: 'Copyright page',
  purpose: 'The block for the back of the title page, the same in every format of an edition.',
  placeholders: [
    { name: 'title', means: 'title of the edition', example: 'The Salt Almanac' },
    { name: 'subtitle', means: 'its subtitle', example: 'A Year by the Tide' },
    { name: 'series', means: 'its series, with the volume', example: 'Harbour Books, 3' },
    { name: 'edition', means: 'its edition statement', example: 'Second edition, with a new foreword' },
    { name: 'authors', means: 'the authors’ names', example: 'Maren Oskarsdal' },
    {
      name: 'contributors',
      means: 'everyone else, one a line with the role',
      example: 'Foreword: Tobias Wrenfield',
    },
    { name: 'imprint', means: 'the name on the title page', example: 'Halyard & Fen' },
    { name: 'publisher', means: 'your press', example: 'Halyard & Fen' },
    { name: 'firstYear', means: 'year in which the first edition was published', example: '2019' },
    { name: 'year', means: 'year in which this edition is published', example: '2026' },
    { name: 'published', means: 'the day it is published', example: '2026-05-15' },
    {
      name: 'isbns',
      means: 'every ISBN of the edition, one a line with its form',
      example: 'ISBN 979-8-969999-05-3 (Paperback)\nISBN 979-8-969999-06-0 (E-book, EPUB)',
    },
    { name: 'isbn', means: 'the ISBN of the one format the text is for', example: '979-8-969999-05-3' },
    { name: 'form', means: 'the form of that one', example: 'Paperback' },
  ],
  subject: '',
  body: [
    '{title}',
    '{subtitle}',
    '{series}',
    '',
    '{edition}',
    'Published in {year} by {imprint}',
    'First published in {firstYear}',
    '',
    'Copyright © {year} {authors}',
    '{contributors}',
    'All rights reserved.',
    '',
    '{isbns}',
    '',
    '{publisher}',
  ].join('\n'),
  unknown: 'line left out',
} as const;

/** Every kind of text with its placeholders and our own wording. */
export const TEXTS = {
  'removal request': REMOVAL,
  chase: CHASE,
  'moved notice': MOVED,
  'copyright page': COPYRIGHT_PAGE,
} as const satisfies Record<TextKind, TextKindFacts>;

/** What a text of a kind is filled with: a value for each of its placeholders, empty where nothing is known. */
export type TextFacts<K extends TextKind> = Record<(typeof TEXTS)[K]['placeholders'][number]['name'], string>;
