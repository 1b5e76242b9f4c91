import type { CheckSummary } from '../../../../src/contract/proof-checks/checks.ts';
import type { CheckState } from '../../../../src/contract/proof-checks/facts.ts';
import type { FileKind } from '../../../../src/contract/terms.ts';

/** What each result means, in the order in which they are looked at. */
export const STATES: readonly {
  state: CheckState;
  title: string;
  /** After a count of several. */
  counted: string;
  tone: 'stop' | 'care' | 'note' | 'done';
  means: string;
}[] = [
  {
    state: 'differs',
    title: 'Differs',
    counted: 'differ',
    tone: 'stop',
    means:
      'The file says something else than the record. Mend the one that is wrong and check again, or say why it is right so.',
  },
  {
    state: 'not found',
    title: 'Not found',
    counted: 'not found',
    tone: 'care',
    means: 'The record has it, and the file does not show it where it was looked for.',
  },
  {
    state: 'cannot tell',
    title: 'Cannot tell',
    counted: 'cannot tell',
    tone: 'note',
    means: 'Nothing could be compared here; look for yourself.',
  },
  {
    state: 'agreed',
    title: 'Agreed',
    counted: 'agreed',
    tone: 'done',
    means: 'The file says what the record says.',
  },
];

export const ACCEPTS: Record<FileKind, string> = {
  interior: '.pdf,application/pdf',
  cover: '.pdf,.png,.jpg,.jpeg,application/pdf,image/png,image/jpeg',
  'e-book': '.epub,.pdf,application/epub+zip,application/pdf',
  audio: '.mp3,.m4b,.m4a,.wav,.flac,.zip,audio/*,application/zip',
};

export const KIND_TITLES: Record<FileKind, string> = {
  interior: 'Interior',
  cover: 'Cover',
  'e-book': 'E-book',
  audio: 'Sound',
};

export const HINTS: Record<FileKind, string> = {
  interior: 'The PDF of the inside, as the printer gets it.',
  cover: 'The PDF of the whole cover, case or jacket, or a PNG or JPEG picture.',
  'e-book': 'The EPUB or PDF, as the channels get it.',
  audio: 'The sound file, or all of them in one zip archive.',
};

/** '2 differ, 1 not found, 12 agreed'; what there is none of is left out. */
export function countsText({ counts }: Pick<CheckSummary, 'counts'>): string {
  const parts = [
    [counts.differs, counts.differs === 1 ? 'differs' : 'differ'],
    [counts['not found'], 'not found'],
    [counts['cannot tell'], 'cannot tell'],
    [counts.agreed, 'agreed'],
  ] as const;
  return parts
    .filter(([count]) => count > 0)
    .map(([count, word]) => `${count} ${word}`)
    .join(', ');
}

/** A place in a file: an e-book has documents in the place of pages. */
export const pageName = (kind: FileKind, page: number): string =>
  kind === 'e-book' ? `document ${page}` : `page ${page}`;

/** How a checked file stands to the final one on record. */
export const FINAL_WORDS: Record<CheckSummary['final'], string> = {
  same: 'the final file',
  other: 'another file than the final one',
  unknown: 'the final file is recorded without its digest',
  none: 'no final file is recorded',
};
