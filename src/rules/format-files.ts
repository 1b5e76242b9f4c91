import type { FileKind } from '../contract/format-files.ts';
import type { Made } from '../contract/terms.ts';

/** The files each way of making a format needs, in the order they are made (common practice, no source). */
const KINDS: Record<Made, readonly FileKind[]> = {
  print: ['interior', 'cover'],
  'e-book': ['e-book', 'cover'],
  audio: ['audio', 'cover'],
};

/** The kinds of final file that a format made so needs. */
export function fileKindsOf(made: Made): readonly FileKind[] {
  return KINDS[made];
}

const NAMES: Record<FileKind, string> = {
  interior: 'interior file',
  cover: 'cover file',
  'e-book': 'e-book file',
  audio: 'sound files',
};

/** 'interior file', as it stands inside a sentence. */
export function fileKindName(kind: FileKind): string {
  return NAMES[kind];
}
