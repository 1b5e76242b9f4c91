import type { CheckLine, PdfFacts } from '../../contract/proof-checks/facts.ts';
import { bleedLine, boxesLine } from './interior-boxes.ts';
import { blankLine, encryptionLine, fontsLine, scriptsLine, versionLine } from './interior-file.ts';
import { otherIsbnLines, ownIsbnLine } from './interior-numbers.ts';
import { multipleLine, pageCountLine, spreadsLine, trimLine } from './interior-pages.ts';
import { colourLine, picturesLine } from './interior-print.ts';
import {
  contributorLines,
  editionLine,
  imprintLine,
  titleLines,
  wordsOf,
  yearLine,
} from './interior-words.ts';
import type { ProofRecord } from './record.ts';

/** An interior against the record, a line for each thing that was looked at; what identifies the book comes first. */
export function checkInterior(facts: PdfFacts, record: ProofRecord): CheckLine[] {
  const words = wordsOf(facts);
  return [
    ownIsbnLine(facts, record),
    ...otherIsbnLines(facts, record),
    ...titleLines(words, record),
    editionLine(words, record),
    yearLine(words, record),
    imprintLine(words, record),
    ...contributorLines(words, record),
    pageCountLine(facts, record),
    multipleLine(facts, record),
    trimLine(facts, record),
    spreadsLine(facts, record),
    boxesLine(facts),
    bleedLine(facts, record),
    colourLine(facts, record),
    picturesLine(facts, record),
    fontsLine(facts),
    blankLine(facts, record),
    versionLine(facts),
    encryptionLine(facts),
    scriptsLine(facts),
  ];
}
