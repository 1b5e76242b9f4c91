import type {
  AudioFacts,
  CheckLine,
  EpubFacts,
  FileFacts,
  PdfFacts,
  PictureFacts,
} from '../../contract/proof-checks/facts.ts';
import { type FileKind, fileKindName } from '../../contract/terms.ts';
import { checkAudio } from './audio.ts';
import { checkCover } from './cover.ts';
import { checkEpub } from './epub.ts';
import { checkInterior } from './interior.ts';
import type { ProofRecord } from './record.ts';

/** Raised whenever a rule judges otherwise than before; kept with every check. */
export const RULE_SET = 1;

interface Judges {
  interior(facts: PdfFacts, record: ProofRecord): CheckLine[];
  cover(facts: PdfFacts | PictureFacts, record: ProofRecord): CheckLine[];
  epub(facts: EpubFacts, record: ProofRecord): CheckLine[];
  audio(facts: AudioFacts, record: ProofRecord): CheckLine[];
}

/** The rules by what they judge. */
const JUDGES: Partial<Judges> = {
  interior: checkInterior,
  cover: checkCover,
  epub: checkEpub,
  audio: checkAudio,
};

function judged(kind: FileKind, facts: FileFacts, record: ProofRecord): CheckLine[] | undefined {
  if (kind === 'interior' && facts.of === 'pdf') return JUDGES.interior?.(facts, record);
  if (kind === 'cover' && (facts.of === 'pdf' || facts.of === 'picture'))
    return JUDGES.cover?.(facts, record);
  if (kind === 'e-book' && facts.of === 'epub') return JUDGES.epub?.(facts, record);
  if (kind === 'audio' && facts.of === 'audio') return JUDGES.audio?.(facts, record);
  return undefined;
}

/** The same for every kind: what could not be read is told, so that no check passes for want of looking. */
function unreadLine(facts: FileFacts): CheckLine[] {
  if (facts.unread.length === 0) return [];
  return [
    {
      check: 'file.unread',
      label: 'What could not be read',
      state: 'cannot tell',
      expected: '',
      found: facts.unread.join(' ').slice(0, 1_000),
      advice: 'Look at these places yourself.',
      page: null,
      box: null,
    },
  ];
}

/** Holds what was read from a final file of a kind against the record. */
export function checkFile(kind: FileKind, facts: FileFacts, record: ProofRecord): CheckLine[] {
  const lines = judged(kind, facts, record);
  if (lines) return [...lines, ...unreadLine(facts)];
  return [
    {
      check: 'file.kind',
      label: 'Kind of file',
      state: 'cannot tell',
      expected: fileKindName(kind),
      found: facts.of,
      advice: `This file cannot be checked as ${fileKindName(kind)}; choose a file of that kind, or compare it by eye.`,
      page: null,
      box: null,
    },
    ...unreadLine(facts),
  ];
}
