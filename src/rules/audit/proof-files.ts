import { fileKindName } from '../../contract/terms.ts';
import type { Facts, FormatFacts } from './facts.ts';
import { type Found, hasEnded, OURS, ofFormat, type Rule } from './rule.ts';

// The final files of a format beside the checks that held them against the record.

type FileFacts = FormatFacts['files'][number];

/** Sent or with a proof out, so that it is about to be cleared. */
const AHEAD: ReadonlySet<string> = new Set(['sent', 'proof']);

function eachFile(facts: Facts, say: (file: FileFacts, format: FormatFacts) => string | null): Found[] {
  return facts.formats
    .filter((format) => !hasEnded(format))
    .flatMap((format) =>
      format.files.flatMap((file) => {
        const message = say(file, format);
        return message === null ? [] : [ofFormat(format, message)];
      }),
    );
}

/** '1 line of the check of its cover file a.pdf differs', '2 lines … differ'. */
function differing(count: number, { kind, checkedName }: FileFacts): string {
  const [what, verb] = count === 1 ? ['1 line', 'differs'] : [`${count} lines`, 'differ'];
  return `${what} of the check of its ${fileKindName(kind)} ${checkedName} ${verb} from the record`;
}

export const proofFileRules: readonly Rule[] = [
  {
    id: 'final-file-differs',
    sentence: 'The check of a final file agrees with the record, or a reason says why it does not.',
    severity: 'should fix',
    mend: 'Open the proof check of the format: mend the file or the record and check again, or give the reason.',
    source: OURS,
    find: (facts) =>
      eachFile(facts, (file, format) =>
        file.open > 0
          ? `${format.label}: ${differing(file.open, file)} without a reason; it cannot be cleared.`
          : null,
      ),
  },
  {
    id: 'other-file-checked',
    sentence: 'The file that was checked is the final one on record.',
    severity: 'should fix',
    mend: 'Check the final file, or record the file that was checked as the final one.',
    source: OURS,
    find: (facts) =>
      eachFile(facts, ({ checks, checkedName, finalName, kind }, format) =>
        checks > 0 && checkedName === null
          ? `${format.label}: its final ${fileKindName(kind)} ${finalName} was not checked; another file was.`
          : null,
      ),
  },
  {
    id: 'final-file-not-checked',
    sentence: 'A final file is checked against the record before its format is cleared.',
    severity: 'note',
    mend: 'Drop the final file on the proof check of the format.',
    source: OURS,
    find: (facts) =>
      eachFile(facts, ({ checks, finalName, kind }, format) =>
        checks === 0 && format.listings.some((listing) => AHEAD.has(listing.standing))
          ? `${format.label} is to be cleared, and its ${fileKindName(kind)} ${finalName} was never checked.`
          : null,
      ),
  },
  {
    id: 'final-file-differs-with-reason',
    sentence: 'What differs between a final file and the record is known.',
    severity: 'note',
    mend: 'Nothing, where the reason still holds; otherwise mend the file or the record and check again.',
    source: OURS,
    find: (facts) =>
      eachFile(facts, (file, format) =>
        file.open === 0 && file.reasoned > 0
          ? `${format.label}: ${differing(file.reasoned, file)}, accepted for a reason.`
          : null,
      ),
  },
];
