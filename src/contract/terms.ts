import { z } from 'zod';
import { MORE_ROLES } from './more-roles.ts';

/** Standings, in the order they are passed through (the product's vocabulary). */
export const NUMBER_STANDINGS = ['free', 'reserved', 'assigned', 'spent'] as const;
export const FORMAT_STANDINGS = [
  'planned',
  'committed',
  'proofing',
  'live',
  'retiring',
  'retired',
  'cancelled',
] as const;
export const LISTING_STANDINGS = [
  'unsent',
  'sent',
  'proof',
  'cleared',
  'selling',
  'leaving',
  'gone',
] as const;
export const TASK_STANDINGS = ['open', 'waiting', 'done', 'dropped'] as const;

export const numberStanding = z.enum(NUMBER_STANDINGS);
export const formatStanding = z.enum(FORMAT_STANDINGS);
export const listingStanding = z.enum(LISTING_STANDINGS);
export const taskStanding = z.enum(TASK_STANDINGS);
export type NumberStanding = z.infer<typeof numberStanding>;
export type FormatStanding = z.infer<typeof formatStanding>;
export type ListingStanding = z.infer<typeof listingStanding>;
export type TaskStanding = z.infer<typeof taskStanding>;

/**
 * Product forms offered when a format is made: codes of ONIX List 150 with plain names of ours. Any other
 * two-letter code of the list is kept as it is. `made` says which fields make sense for the form.
 */
export const PRODUCT_FORMS = [
  { code: 'BC', name: 'Paperback', made: 'print' },
  { code: 'BB', name: 'Hardcover', made: 'print' },
  { code: 'BE', name: 'Spiral bound', made: 'print' },
  { code: 'BH', name: 'Board book', made: 'print' },
  { code: 'ED', name: 'E-book', made: 'e-book' },
  { code: 'AJ', name: 'Audiobook download', made: 'audio' },
  { code: 'AC', name: 'Audiobook on CD', made: 'audio' },
] as const;
export type Made = (typeof PRODUCT_FORMS)[number]['made'];

/** File format of an e-book or audiobook: codes of ONIX List 175. */
export const FORM_DETAILS = [
  { code: 'E101', name: 'EPUB', made: 'e-book' },
  { code: 'E107', name: 'PDF', made: 'e-book' },
  { code: 'A103', name: 'MP3', made: 'audio' },
  { code: 'A107', name: 'AAC', made: 'audio' },
  { code: 'B504', name: 'with flaps', made: 'print' },
] as const;

/** How the format is made, from its List 150 code: print, e-book, audio; anything else counts as print. */
export function madeOf(form: string): Made {
  if (form.startsWith('A')) return 'audio';
  return form.startsWith('E') || form.startsWith('L') ? 'e-book' : 'print';
}

/** Plain name of a product form with what tells it apart: 'Hardcover (jacket)', 'E-book (EPUB)', 'Paperback, large print'. */
export function formName(format: {
  form: string;
  formDetail?: string | null;
  caseKind?: string | null;
  largePrint?: boolean;
}): string {
  const name = PRODUCT_FORMS.find((entry) => entry.code === format.form)?.name ?? `Form ${format.form}`;
  const detail = FORM_DETAILS.find((entry) => entry.code === format.formDetail)?.name ?? format.formDetail;
  const aside = [format.caseKind, detail].filter((part) => part).join(', ');
  return `${name}${aside ? ` (${aside})` : ''}${format.largePrint ? ', large print' : ''}`;
}

/** Contributor roles offered first: codes of ONIX List 17 with plain names; any other code of the list is accepted. */
export const CONTRIBUTOR_ROLES = [
  { code: 'A01', name: 'Author' },
  { code: 'A12', name: 'Illustrator' },
  { code: 'A23', name: 'Foreword' },
  { code: 'A24', name: 'Introduction' },
  { code: 'A15', name: 'Preface' },
  { code: 'A19', name: 'Afterword' },
  { code: 'A13', name: 'Photographs' },
  { code: 'A36', name: 'Cover design' },
  { code: 'A20', name: 'Notes' },
  { code: 'A34', name: 'Index' },
  { code: 'A39', name: 'Maps' },
  { code: 'B01', name: 'Editor' },
  { code: 'B02', name: 'Reviser' },
  { code: 'B04', name: 'Abridger' },
  { code: 'B05', name: 'Adapter' },
  { code: 'B06', name: 'Translator' },
  { code: 'C01', name: 'Compiler' },
  { code: 'E03', name: 'Narrator' },
  { code: 'E07', name: 'Reader' },
  { code: 'Z99', name: 'Other' },
] as const;

/** Every role that is known here by a name, those offered first at the head. */
export const ALL_ROLES: readonly { code: string; name: string }[] = [...CONTRIBUTOR_ROLES, ...MORE_ROLES];

/** Plain name of a List 17 role code. */
export function roleName(code: string): string {
  return ALL_ROLES.find((role) => role.code === code)?.name ?? `Role ${code}`;
}

export const CASE_KINDS = ['laminate', 'cloth', 'jacket'] as const;
export const INTERIOR_COLOURS = ['black', 'standard colour', 'premium colour'] as const;
export const FINISHES = ['matte', 'gloss', 'uncoated'] as const;
export const AUDIENCES = ['general', 'children', 'young adult', 'education', 'professional'] as const;
export const SUBJECT_SCHEMES = ['thema', 'bisac', 'own'] as const;
export const CHANNEL_KINDS = ['print', 'e-book', 'audio', 'any'] as const;
export const PROOF_KINDS = ['none', 'electronic', 'physical'] as const;

/** Fields of an edition that lock with the first submission of any of its formats. */
export const EDITION_IDENTITY = [
  'title',
  'subtitle',
  'number',
  'statement',
  'contributors',
  'language',
  'imprint',
  'series',
  'seriesNumber',
] as const;

/** Fields of a format that lock with its own first submission, beside its ISBN. */
export const FORMAT_IDENTITY = ['form', 'formDetail', 'caseKind', 'largePrint'] as const;

/** Open fields that a channel may lock at its submission beside the identity fields. 'trimWidthUm' stands for the trim size. */
export const LOCKABLE_FIELDS = [
  'trimWidthUm',
  'pages',
  'interiorColour',
  'paper',
  'finish',
  'publicationDate',
  'onSaleDate',
  'description',
  'audience',
] as const;

/** Returns terms: codes of ONIX List 66. */
export const RETURNS = [
  { code: 'Y', name: 'Returnable, whole copies' },
  { code: 'S', name: 'Returnable, stripped cover' },
  { code: 'C', name: 'Returnable on conditions' },
  { code: 'N', name: 'Not returnable' },
] as const;

/** Kinds of final file: of a printed format inside and cover, of an e-book or audiobook the file and its cover. */
export const FILE_KINDS = ['interior', 'cover', 'e-book', 'audio'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

const FILES_OF: Record<Made, readonly FileKind[]> = {
  print: ['interior', 'cover'],
  'e-book': ['e-book', 'cover'],
  audio: ['audio', 'cover'],
};

/** The kinds of final file that a format made so needs, in the order they are made (common practice, no source). */
export function fileKindsOf(made: Made): readonly FileKind[] {
  return FILES_OF[made];
}

const FILE_NAMES: Record<FileKind, string> = {
  interior: 'interior file',
  cover: 'cover file',
  'e-book': 'e-book file',
  audio: 'sound files',
};

/** 'interior file', as it stands inside a sentence. */
export function fileKindName(kind: FileKind): string {
  return FILE_NAMES[kind];
}
