import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import { pairFormats } from '../../../../src/contract/pairs.ts';
import { fileKindName, fileKindsOf, madeOf } from '../../../../src/contract/terms.ts';
import type { LengthUnit } from '../../../lib/length.ts';
import { durationText, pricesText, trimText } from '../format/format-texts.ts';
import { peopleOf } from '../parts/edition-names.ts';
import { FIELD_NAMES, languageName } from '../parts/names.ts';
import { audienceText } from './edition-texts.ts';

/** What became of one field on the way from one edition to the next. */
export type Carried = 'carried' | 'changed' | 'new' | 'to decide' | 'left behind';

export interface CompareRow {
  name: string;
  old: string;
  now: string;
  state: Carried;
}

export interface CompareGroup {
  /** 'The edition', or the name of a format. */
  name: string;
  rows: CompareRow[];
}

interface Told {
  name: string;
  text: string;
  /** The next edition has to have it: an empty one is to be decided. */
  needed?: boolean;
}

const joined = (parts: readonly (string | null | undefined)[]) => parts.filter(Boolean).join(', ');

function editionTexts(edition: Edition): Told[] {
  return [
    { name: FIELD_NAMES.title, text: edition.title, needed: true },
    { name: FIELD_NAMES.subtitle, text: edition.subtitle },
    { name: FIELD_NAMES.number, text: String(edition.number ?? '') },
    { name: FIELD_NAMES.statement, text: edition.statement },
    { name: FIELD_NAMES.contributors, text: peopleOf(edition.contributors), needed: true },
    { name: FIELD_NAMES.language, text: languageName(edition.language), needed: true },
    { name: FIELD_NAMES.imprint, text: edition.imprint, needed: true },
    { name: FIELD_NAMES.series, text: joined([edition.series, edition.seriesNumber]) },
    { name: FIELD_NAMES.description, text: edition.description, needed: true },
    { name: FIELD_NAMES.keywords, text: edition.keywords.join('; '), needed: true },
    {
      name: FIELD_NAMES.subjects,
      text: edition.subjects.map(({ code, heading }) => heading || code).join('; '),
      needed: true,
    },
    { name: FIELD_NAMES.audience, text: audienceText(edition) },
  ];
}

function printTexts(format: Format, unit: LengthUnit): Told[] {
  return [
    { name: 'Trim size', text: trimText(format, unit), needed: true },
    { name: FIELD_NAMES.pages, text: format.pages?.toLocaleString() ?? '', needed: true },
    { name: 'Interior', text: joined([format.interiorColour, format.paper]), needed: true },
    { name: 'Cover', text: joined([format.finish, format.insideCoverPrint ? 'printed inside' : '']) },
  ];
}

function formatTexts(format: Format, unit: LengthUnit): Told[] {
  const made = madeOf(format.form);
  const fileOf = (kind: Format['files'][number]['kind']) =>
    format.files.find((file) => file.kind === kind && file.ended === null)?.fileName ?? '';
  return [
    { name: FIELD_NAMES.isbn, text: format.hyphenated ?? '', needed: true },
    { name: FIELD_NAMES.form, text: format.name },
    ...(made === 'print' ? printTexts(format, unit) : []),
    ...(made === 'audio'
      ? [{ name: FIELD_NAMES.durationMinutes, text: durationText(format.durationMinutes), needed: true }]
      : []),
    { name: FIELD_NAMES.prices, text: pricesText(format.prices), needed: true },
    { name: FIELD_NAMES.publicationDate, text: format.publicationDate ?? '', needed: true },
    { name: FIELD_NAMES.onSaleDate, text: format.onSaleDate ?? '', needed: true },
    {
      name: 'Channels',
      text: format.listings
        .map((listing) => listing.channelName)
        .sort()
        .join(', '),
      needed: true,
    },
    ...fileKindsOf(made).map((kind) => ({
      name: `Final ${fileKindName(kind)}`,
      text: fileOf(kind),
      needed: true,
    })),
  ];
}

function stateOf(old: string, now: Told): Carried {
  if (now.text === '') return now.needed ? 'to decide' : 'left behind';
  if (old === '') return 'new';
  return old === now.text ? 'carried' : 'changed';
}

function rowsOf(olds: readonly Told[], news: readonly Told[]): CompareRow[] {
  return news
    .map((now) => {
      const old = olds.find((one) => one.name === now.name)?.text ?? '';
      return { name: now.name, old, now: now.text, state: stateOf(old, now) };
    })
    .filter((row) => row.old !== '' || row.now !== '' || row.state === 'to decide');
}

const running = (edition: Edition) => edition.formats.filter((format) => format.standing !== 'cancelled');

/** Two editions side by side: the edition's own fields, then each format beside the one it follows, then what was left. */
export function compareGroups(old: Edition, now: Edition, unit: LengthUnit): CompareGroup[] {
  const pairs = pairFormats(running(old), running(now));
  const followed = new Set(pairs.values());
  const left = running(old).filter((format) => !followed.has(format));
  return [
    { name: 'The edition', rows: rowsOf(editionTexts(old), editionTexts(now)) },
    ...running(now).map((format) => {
      const before = pairs.get(format);
      return {
        name: before ? format.name : `${format.name}, which is new`,
        rows: rowsOf(before ? formatTexts(before, unit) : [], formatTexts(format, unit)),
      };
    }),
    ...left.map((format) => ({
      name: `${format.name}, which was not carried`,
      rows: [
        { name: FIELD_NAMES.isbn, old: format.hyphenated ?? '', now: '', state: 'left behind' as const },
      ],
    })),
  ];
}

const ORDER: readonly Carried[] = ['to decide', 'new', 'changed', 'carried', 'left behind'];

/** '4 to decide, 3 new, 2 changed, 9 carried' */
export function compareSummary(groups: readonly CompareGroup[]): string {
  const states = groups.flatMap((group) => group.rows.map((row) => row.state));
  return ORDER.map((state) => ({ state, count: states.filter((one) => one === state).length }))
    .filter(({ count }) => count > 0)
    .map(({ state, count }) => `${count} ${state}`)
    .join(', ');
}
