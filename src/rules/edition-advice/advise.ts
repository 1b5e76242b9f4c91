import type {
  AdviceLine,
  AdviceVerdict,
  EditionAdvice,
  EditionChange,
  FormatAdvice,
  TextExtent,
} from '../../contract/edition-advice.ts';
import type { Made } from '../../contract/terms.ts';
import { answerTo } from './answer.ts';
import { ruleOn } from './index.ts';
import { sourceText } from './sources.ts';

/** A format as the advice sees it. */
export interface AdvisedFormat {
  /** Null for a form that is only thought of. */
  id: number | null;
  name: string;
  made: Made;
  hyphenated: string | null;
  /** It follows no format of the other edition: what makes it a product of its own; nothing else is asked of it. */
  addedBy?: EditionChange;
}

/** One change, told by the user or read from the records. */
export interface Change {
  change: EditionChange;
  /** Ids of the formats it concerns; null for all that it can concern. */
  formatIds: readonly number[] | null;
  detail: string;
  told: 'stated' | 'record';
}

const RULE_OF_TEXT: Record<TextExtent, EditionChange | null> = {
  unchanged: null,
  corrections: 'text-corrections',
  some: 'text-some',
  substantial: 'text-substantial',
};

/** The change that a stated extent of the text's change amounts to. */
export function textChange(extent: TextExtent | null): Change[] {
  const change = extent === null ? null : RULE_OF_TEXT[extent];
  return change === null ? [] : [{ change, formatIds: null, detail: '', told: 'stated' }];
}

/** The graver verdict wins: a new number over one's own call, and that over keeping. */
const GRAVITY: readonly AdviceVerdict[] = ['same', 'judge', 'new'];

/** What several verdicts together come to; none at all keeps the number. */
export function gravest(verdicts: readonly AdviceVerdict[]): AdviceVerdict {
  return GRAVITY.findLast((verdict) => verdicts.includes(verdict)) ?? 'same';
}

function lineOf({ change, detail, told }: Change): AdviceLine {
  const { label, verdict, rule, sources, weigh } = ruleOn(change);
  return { change, title: label, detail, told, verdict, rule, source: sourceText(sources), weigh };
}

function bearsOn({ change, formatIds }: Change, format: AdvisedFormat): boolean {
  const { concerns, beside } = ruleOn(change);
  if (beside !== null || !concerns.includes(format.made)) return false;
  return formatIds === null || (format.id !== null && formatIds.includes(format.id));
}

/** The lines on one format, each change once: what the records tell goes before what is stated of the same. */
function linesOn(format: AdvisedFormat, changes: readonly Change[]): AdviceLine[] {
  if (format.addedBy !== undefined)
    return [lineOf({ change: format.addedBy, formatIds: null, detail: '', told: 'record' })];
  const bearing = changes.filter((change) => bearsOn(change, format));
  const byChange = new Map(bearing.toReversed().map((change) => [change.change, change]));
  return bearing.filter((change) => byChange.get(change.change) === change).map(lineOf);
}

const WHY: Record<AdviceVerdict, string> = {
  new: 'A new number is required.',
  judge: 'It is your call: weigh what is said below.',
  same: 'Keep the number.',
};

type Wish = 'new' | 'keep' | null;

function adviceOn(format: Omit<AdvisedFormat, 'made'>, lines: AdviceLine[], wish: Wish): FormatAdvice {
  const told =
    lines.length > 0 ? lines : [lineOf({ change: 'unchanged', formatIds: null, detail: '', told: 'record' })];
  const sorted = told.toSorted((a, b) => GRAVITY.indexOf(b.verdict) - GRAVITY.indexOf(a.verdict));
  const verdict = gravest(told.map((line) => line.verdict));
  const { id, name, hyphenated } = format;
  return {
    formatId: id,
    name,
    hyphenated,
    verdict,
    why: WHY[verdict],
    lines: sorted,
    answer: answerTo(wish, verdict, sorted),
  };
}

/** The advice on each format, and after them on each product beside them that some change brings about. */
export function adviseFormats(
  formats: readonly AdvisedFormat[],
  changes: readonly Change[],
  wish: Wish,
): FormatAdvice[] {
  const own = formats.map((format) =>
    adviceOn(format, linesOn(format, changes), format.addedBy === undefined ? wish : null),
  );
  const beside = changes.flatMap((change) => {
    const name = ruleOn(change.change).beside;
    return name === null ? [] : [adviceOn({ id: null, name, hyphenated: null }, [lineOf(change)], null)];
  });
  return [...own, ...beside];
}

/** The verdict on all formats together. */
export function overallOf(formats: readonly FormatAdvice[]): EditionAdvice['overall'] {
  const verdicts = new Set(formats.map((format) => format.verdict));
  const [only] = verdicts;
  return verdicts.size > 1 ? 'mixed' : (only ?? 'same');
}

/** Whether some format is to have a new number, or may have one, for a reason that concerns the edition as a whole. */
export function needsEdition(formats: readonly FormatAdvice[]): boolean {
  const ofEdition = (line: AdviceLine) =>
    line.verdict !== 'same' && ruleOn(line.change).scope === 'edition' && ruleOn(line.change).beside === null;
  return formats.some((format) => format.lines.some(ofEdition));
}
