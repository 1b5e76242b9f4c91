import { rulesOf } from './rule.ts';

/** What the reader of a file may do with it. */
export const RIGHTS_RULES = rulesOf('rights', { scope: 'format', concerns: ['e-book', 'audio'] }, [
  {
    change: 'drm',
    label: 'Another copy protection (DRM), with the same use allowed',
    verdict: 'same',
    rule: 'One file format whose readers may do the same keeps one number, whatever protects it.',
    sources: [['IA-26'], ['REPORT']],
    weigh:
      'Look at what the reader may do: print, copy, lend, on how many devices. If that changes, tick the next one.',
  },
  {
    change: 'usage',
    label: 'What the reader may do with it changes (printing, copying, lending, devices)',
    verdict: 'new',
    rule: 'Significantly different constraints on use make a product of their own: a new number.',
    sources: [['IA-26'], ['REPORT'], ['M7', 'section 3 (usage constraint)']],
    weigh: 'If the old and the new are not sold at the same time and the change is slight, ask your agency.',
  },
  {
    change: 'lending',
    label: 'A version for lending by libraries is added',
    beside: 'The version for lending',
    verdict: 'judge',
    rule: 'A version for lending is treated apart: usually it takes a number of its own for each format that is lent.',
    sources: [['REPORT'], ['PRACTICE']],
    weigh: 'Ask the lending channel what it expects. The version that is sold keeps its number.',
  },
]);

/** What comes out beside the formats, or takes no number at all. */
export const BESIDE_RULES = rulesOf('beside', {}, [
  {
    change: 'set',
    label: 'It is sold in a set with other volumes, too',
    beside: 'The set',
    verdict: 'new',
    rule: 'A set that is sold as a whole takes a number of its own; each volume that is sold alone keeps its own.',
    sources: [['M4', 'section 5.5'], ['FAQ'], ['M7', 'section 6.5']],
    weigh:
      'A number for each volume is advisable even if it is not sold alone; list all numbers in each volume.',
  },
  {
    change: 'pack',
    label: 'It is sold in a pack with other things, too',
    beside: 'The pack',
    verdict: 'new',
    rule: 'A pack takes one number for the whole; each part that is sold apart keeps its own.',
    sources: [['FAQ'], ['M7', 'section 6.6']],
    weigh: 'The number of the pack belongs on its outside; the book inside keeps its own.',
  },
  {
    change: 'chapter',
    label: 'Single chapters are sold by themselves, too',
    beside: 'A chapter sold alone',
    verdict: 'judge',
    rule: 'A chapter that can be bought by itself may have a number of its own.',
    sources: [['IA-10'], ['ISO', 'scope']],
    weigh: 'If it is to be ordered through the trade, it needs one; on your own site alone, it does not.',
  },
  {
    change: 'personal',
    label: 'Single copies are made for one person (a name, a dedication)',
    verdict: 'same',
    rule: 'A personalised copy of limited availability takes no number; the book keeps its own.',
    sources: [['M5', 'section 7']],
    weigh: 'If the personalised version is on general sale, ask your agency.',
    concerns: ['print'],
  },
  {
    change: 'converter',
    label: 'Files are handed to somebody who converts them',
    verdict: 'same',
    rule: 'Files that are passed on for conversion, and the work in the abstract, take no number; what is sold keeps its own.',
    sources: [['IA-26']],
    weigh:
      'What the converter sells in another file format takes a number of its own; agree on who gives it.',
  },
]);
