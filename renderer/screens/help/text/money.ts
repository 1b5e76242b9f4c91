import type { HelpText } from './types.ts';

export const MONEY: HelpText = {
  doors: [
    { to: '/catalogue', label: 'Catalogue: open a work, then Money beside one of its editions' },
    { to: '/settings', label: 'Settings: how prices end' },
  ],
  sections: [
    {
      id: 'kept',
      heading: 'What a copy keeps',
      blocks: [
        'A copy keeps its list price less the discount of the channel and the cost of printing it. At a list price of 16.99, a discount of 40 % and a print cost of 4.67 that is 5.52: 16.99 × 0.60 is 10.194, less 4.67 is 5.524, and only this last amount is rounded, to the nearest minor unit, a half away from zero. A loss is never rounded to nothing.',
        'Nothing is printed of an e-book or a download; the discount is then the share that the channel takes, as its terms name it. Other terms, such as a fee for each download, are not taken off: record them in the note of the listing and reckon with them.',
        'Tax is not taken off. Where a list price includes tax, a channel usually takes its discount from the price without it, and less is kept than shown.',
      ],
      sources: [['OURS'], ['PRACTICE']],
    },
    {
      id: 'lowest',
      heading: 'The lowest price, and how prices end',
      blocks: [
        'The lowest list price is the print cost divided by what the discount leaves, rounded up: with 55 % discount and a print cost of 4.25 it is 9.45. Beside it stand the first prices at or above it that end as yours do, such as .99 or .95; the endings of each currency are set in Settings.',
      ],
      sources: [['OURS'], ['PRACTICE']],
    },
    {
      id: 'returns',
      heading: 'Copies that come back',
      blocks: [
        'A returned copy was printed and earns nothing. Of 100 copies at 19.95, 55 % discount and 4.25 print cost, of which 25 come back, receipts are 673.31, printing 425.00, and 248.31 is left, before freight and handling. The table also says up to which share of returns nothing is lost.',
      ],
      sources: [['OURS'], ['PRACTICE']],
    },
    {
      id: 'cards',
      heading: 'Print-cost cards',
      blocks: [
        'A card says what printing a copy costs on one channel in one currency: a fixed part and a part for each page. Type both as the printer states them, or enter quotes for books of different page counts. Two quotes give the line exactly; more give the line nearest to them (least squares), and each quote is shown with how far it is off.',
        'Odd page counts are filled up to the next even one, since a leaf has two pages. Outside the page counts that were quoted the cost is marked as such. Quotes that contradict each other, and costs that do not lie on one line, are named: printers often have steps, and a step needs a card for each range of pages.',
        {
          list: [
            'A print cost typed with the terms of a listing comes first.',
            'Otherwise the closest card of the channel that holds on the day: by form, kind of case, colour of the inside, the smallest trim that holds the book; of equal ones the newest.',
            'Nothing is taken from another channel or currency. What is not known is called so.',
          ],
        },
      ],
      sources: [['OURS'], ['PRACTICE']],
    },
    {
      id: 'change',
      heading: 'Changing a price',
      blocks: [
        'A changed price keeps the number. Before it is changed, the table shows for every listing the price and what is kept, now and then, and from when the channel can have it by its lead time. With the change, the Agenda gets a task for every channel that has the old price, dated so that all of them show the new one from the same day. A price that is printed on the cover or in the bar code has to follow.',
      ],
      sources: [['M6', 'section 5.2'], ['PRACTICE']],
    },
  ],
};
