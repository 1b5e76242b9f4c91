import { rulesOf } from './rule.ts';

/** How it is made. */
export const FORM_RULES = rulesOf('form', { scope: 'format' }, [
  {
    change: 'form',
    label: 'It comes out in a further product form',
    stated: false,
    verdict: 'new',
    rule: 'Each product form takes a number of its own: hardcover, paperback, e-book, audiobook.',
    sources: [['M4', 'section 5.3'], ['M6', 'section 5.2'], ['IA-10']],
    weigh: 'The forms there are already keep theirs; a further form alone needs no new edition.',
  },
  {
    change: 'large-print',
    label: 'It is set in large print',
    stated: false,
    concerns: ['print'],
    verdict: 'new',
    rule: 'Large print is a product form of its own and takes a number of its own.',
    sources: [['M4', 'section 5.3'], ['M6', 'section 5.2'], ['IA-10']],
    weigh: 'The ordinary print keeps its number.',
  },
  {
    change: 'file-format',
    label: 'Another file format (EPUB, PDF, MP3 …)',
    concerns: ['e-book', 'audio'],
    verdict: 'new',
    rule: 'Each file format that can be bought by itself takes a number of its own.',
    sources: [['IA-26'], ['M6', 'section 6.3'], ['REPORT']],
    weigh:
      'A channel that converts your one file into its own format needs none from you: see files for a converter.',
  },
  {
    change: 'binding',
    label: 'Another kind of case or binding within the same form',
    concerns: ['print'],
    verdict: 'judge',
    rule: 'Another product form takes a new number; whether a jacket instead of a printed case is another product is for the publisher to say.',
    sources: [['M4', 'section 5.3'], ['PRACTICE']],
    weigh:
      'If both are to be had at once, or cost differently, a shop must be able to order the one or the other: take a new number. If the new binding simply follows the old, keep it.',
  },
  {
    change: 'trim-shaved',
    label: 'The trim is a little smaller or larger, to suit the machine',
    concerns: ['print'],
    verdict: 'same',
    rule: 'Print on demand in the same form, its trim shaved to suit the machine, keeps its number.',
    sources: [['M5', 'section 7']],
    weigh: 'Up to 3 mm a side is taken as shaved here; that measure is ours.',
  },
  {
    change: 'trim',
    label: 'The trim size changes visibly',
    concerns: ['print'],
    verdict: 'judge',
    rule: 'No rule names the trim size by itself, beyond a trim shaved to suit the machine.',
    sources: [['M5', 'section 7'], ['PRACTICE']],
    weigh:
      'A visibly larger or smaller book is another product to a shop, with another price and another place on the shelf; many channels lock the trim size under a number.',
  },
  {
    change: 'interior-colour',
    label: 'The inside is printed in colour instead of black, or the other way round',
    concerns: ['print'],
    verdict: 'judge',
    rule: 'No rule names the printing of the inside by itself.',
    sources: [['PRACTICE']],
    weigh:
      'If pictures are seen in colour that were grey before, a buyer would call it another book. Many print channels lock it under a number.',
  },
  {
    change: 'pages',
    label: 'The number of pages changes',
    stated: false,
    concerns: ['print'],
    verdict: 'same',
    rule: 'More or fewer pages call for nothing by themselves: the change of the text is the test.',
    sources: [['M6', 'section 5.2']],
    weigh:
      'Say above how far the text changes. A book that is only set anew is a reprint; its spine and cover change.',
  },
  {
    change: 'paper',
    label: 'Another paper or cover finish',
    concerns: ['print'],
    verdict: 'same',
    rule: 'Another paper or finish in the same form keeps the number.',
    sources: [['PRACTICE']],
    weigh: 'A thicker paper changes the spine: the cover file has to follow.',
  },
  {
    change: 'cover',
    label: 'The cover design or its colour changes',
    verdict: 'same',
    rule: 'A changed cover design or colour keeps the number.',
    sources: [['M6', 'section 5.2']],
    weigh: 'Send the new cover to every channel under the old number; the bar code on it stays.',
  },
]);

/** How it is sold. */
export const SALE_RULES = rulesOf('sale', { scope: 'format' }, [
  {
    change: 'price',
    label: 'The price changes',
    verdict: 'same',
    rule: 'A changed price keeps the number.',
    sources: [['M4', 'section 5.1'], ['M6', 'section 5.2'], ['FAQ']],
    weigh:
      'Give the new price to every channel with the same day; a price printed in the bar code’s add-on has to follow.',
  },
  {
    change: 'price-model',
    label: 'Channels sell the same file by different ways of pricing (sale, loan, subscription)',
    verdict: 'same',
    rule: 'One format sold by different price models on different channels keeps one number.',
    sources: [['REPORT']],
    weigh: 'If the file itself differs in what the reader may do, tick that instead.',
  },
  {
    change: 'channel',
    label: 'It is sold on a further channel, or printed elsewhere, in the same form',
    verdict: 'same',
    rule: 'A further channel or another printer, in the same form and by the same publisher, keeps the number.',
    sources: [['M5', 'section 7'], ['REPORT']],
    weigh:
      'Never let a channel give it a number of its own: the same number everywhere keeps its record together.',
  },
  {
    change: 'data',
    label: 'Description, keywords, subjects, audience or dates change',
    verdict: 'same',
    rule: 'What is said about the book is no part of it: the number is kept.',
    sources: [['PRACTICE']],
    weigh: 'Change it on every channel on the same day, and with the agency where it keeps the data.',
  },
  {
    change: 'pod-bought',
    label: 'It is printed on demand by a publisher that bought the right to do so',
    verdict: 'new',
    rule: 'Print on demand by a publisher that bought the rights takes a number of that publisher’s own.',
    sources: [['M5', 'section 7']],
    weigh: 'A printer that prints for you is no publisher: then the number is kept.',
    concerns: ['print'],
  },
  {
    change: 'marketing',
    label: 'Nothing changes, but a new number would help to sell it',
    verdict: 'same',
    scope: 'edition',
    rule: 'A new number for the sake of selling alone is not permitted.',
    sources: [['FAQ']],
    weigh: 'New dates, a new description and a new cover are free under the old number.',
  },
]);
