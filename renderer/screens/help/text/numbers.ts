import type { HelpText } from './types.ts';

export const NUMBERS: HelpText = {
  doors: [{ to: '/numbers', label: 'Numbers' }],
  sections: [
    {
      id: 'one-each',
      heading: 'One number for each format',
      blocks: [
        'The number names one edition in one product form by one publisher, not the text as such. Hardcover, paperback, large print and audiobook each take one; so does each e-book file format that can be bought by itself.',
        'A set that is sold as a whole takes a number of its own beside those of its volumes.',
      ],
      sources: [['ISO', 'scope'], ['AGENCY'], ['M4', 'sections 5.3 and 5.5'], ['E_BOOKS']],
    },
    {
      id: 'never-again',
      heading: 'Never used again',
      blocks: [
        'A number that was once given to a format is never given to another, not even when the book is out of print or never came out, or when it was given by mistake. Here a number whose format was cancelled or whose copies were misprinted is called spent.',
        'Shops, libraries and readers keep a number for decades. A second book under it would be delivered in place of the first.',
        'That is why taking a number cannot be undone here. To keep one for later, reserve it: a reserved number can still be given back.',
      ],
      sources: [['M4', 'section 5.13'], ['M7', 'section 7.8'], ['FINLAND'], ['OURS', 'reserving']],
    },
    {
      id: 'blocks',
      heading: 'Blocks',
      blocks: [
        'A number has five parts: 978 or 979, the group (a country, region or language), the registrant (you), the publication, and the check digit. Group, registrant and publication together have nine digits, so a longer registrant part means a smaller block: 10, 100, 1,000 and so on.',
        'A full block is not enlarged; the agency gives you a further one with another registrant part. Ask in time: the Numbers screen says how long yours will last at the pace they are taken.',
        'Where a number is parted by hyphens follows from the agency’s range table, which changes. Settings shows the date of the one in use.',
      ],
      sources: [['AGENCY'], ['M5', 'Table 3 (sizes of blocks)'], ['POLICIES'], ['OURS', 'the runway']],
    },
    {
      id: 'check-digit',
      heading: 'The check digit',
      blocks: [
        'Multiply the first twelve digits by 1 and 3 in turn and add the products up; the check digit brings the sum to a multiple of ten. For 978-0-306-40615 the sum is 93, so the check digit is 7.',
        'It finds every single wrong digit. It does not find two neighbours that changed places where they differ by five: 9780306406157 and 9780306401657 both pass. So compare a number with its source, not only with its check digit.',
        'A ten-digit number of before 2007 can be written with 13 digits: put 978 in front and work out the check digit anew. A number that begins with 979 has no ten-digit form.',
      ],
      sources: [['AGENCY'], ['M5', 'section 4.5'], ['COMPUTED']],
    },
    {
      id: 'where-printed',
      heading: 'Where it is printed',
      blocks: [
        'On the back of the title page, with all formats that come out together and their forms in brackets; on the outside of the back cover; and in the bar code, with the letters ISBN and the hyphenated number above it. An e-book names it on its title display, and carries its own number in the file, not that of the printed book.',
        'Print the bar code between 80 and 200 per cent of its nominal size, and leave the quiet zones beside it free. A printer that places the bar code itself wants the room only: ask.',
      ],
      sources: [
        ['M4', 'section 7.1'],
        ['M6', 'section 8.2'],
        ['FINLAND'],
        ['EPUB', 'dc:identifier'],
        ['GS1', 'EAN-13 at retail'],
      ],
    },
    {
      id: 'reporting',
      heading: 'Reporting',
      blocks: [
        'The publisher tells the agency, or the bibliographic agency it names, what each number stands for. A working title will do at first; report the final one. What is wanted and when differs from agency to agency.',
      ],
      sources: [['PUBLISHERS'], ['M7', 'section 8']],
    },
  ],
};
