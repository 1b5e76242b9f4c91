import type { AdviceLine, AdviceVerdict, FormatAdvice } from '../../contract/edition-advice.ts';
import { sourceText } from './sources.ts';

const NEVER_AGAIN =
  'The old number stands for the old book for ever: whoever orders it must get what it was given to.';

/** Where it says that a wish alone is no reason. */
const WISHES = sourceText([['FAQ']]);

/** The lines that decide, joined for one sentence. */
function reasons(lines: readonly AdviceLine[], verdict: AdviceVerdict): string {
  return lines
    .filter((line) => line.verdict === verdict)
    .map((line) => line.rule)
    .join(' ');
}

/**
 * What is said to a wish: granted where the rules say the same, refused with the reason where they say
 * otherwise, left to the user where it is a judgement call. Null where nothing is wished.
 */
export function answerTo(
  wish: 'new' | 'keep' | null,
  verdict: AdviceVerdict,
  lines: readonly AdviceLine[],
): FormatAdvice['answer'] {
  if (wish === null) return null;
  const source = [
    ...new Set(lines.filter((line) => line.verdict === verdict).map((line) => line.source)),
  ].join(' ');
  if (verdict === 'judge')
    return {
      granted: null,
      sentence: 'The rules leave it to you. Note why you decided as you did; it is kept with the edition.',
      source,
    };
  const why = reasons(lines, verdict);
  if (verdict === 'new')
    return wish === 'new'
      ? { granted: true, sentence: why, source }
      : { granted: false, sentence: `The number cannot be kept. ${why} ${NEVER_AGAIN}`, source };
  if (wish === 'keep') return { granted: true, sentence: why, source };
  return {
    granted: false,
    sentence: `No new number is given for this. ${why} A new number for the wish alone is not permitted; it would split the book’s orders and reviews between two records.`,
    source: source.includes(WISHES) ? source : `${source} ${WISHES}`,
  };
}
