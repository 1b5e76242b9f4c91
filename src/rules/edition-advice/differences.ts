import type { Contributor, EditionFields } from '../../contract/editions.ts';
import type { FormatFields } from '../../contract/formats.ts';
import { pairFormats } from '../../contract/pairs.ts';
import { formName, madeOf, roleName } from '../../contract/terms.ts';
import { fieldName } from '../locks.ts';
import type { Change } from './advise.ts';

/** A format of either edition, as far as its difference goes. */
export type ComparedFormat = FormatFields & { id: number; channels: readonly string[] };
export type ComparedEdition = EditionFields & { formats: readonly ComparedFormat[] };

/** Roles of ONIX List 17 by what their coming or going says of the text. */
const REWORKING = new Set(['B02', 'B04', 'B05', 'B06']);
const ADDING = new Set(['A12', 'A13', 'A15', 'A19', 'A20', 'A23', 'A24', 'A34', 'A39']);
const READING = new Set(['E03', 'E07']);
const OF_THE_COVER = new Set(['A36']);

/** A trim changed by no more than this on each measure counts as shaved to suit the machine; the measure is ours. */
export const SHAVED_UM = 3_000;

const from = (old: string, now: string) => `${old || 'none'} → ${now || 'none'}`;
const ofRecord = (change: Change['change'], detail: string, formatIds: number[] | null = null): Change => ({
  change,
  formatIds,
  detail,
  told: 'record',
});

function changeOfRole(role: string): Change['change'] {
  if (REWORKING.has(role)) return 'reworked';
  if (ADDING.has(role)) return 'matter-added';
  if (READING.has(role)) return 'narration';
  return OF_THE_COVER.has(role) ? 'cover' : 'credits';
}

const sameCredit = (a: Contributor, b: Contributor) => a.role === b.role && a.name === b.name;

/** Names that came or went, by what their role says; a changed order alone says nothing. */
function contributorChanges(old: EditionFields, now: EditionFields): Change[] {
  const came = now.contributors.filter((one) => !old.contributors.some((other) => sameCredit(one, other)));
  const went = old.contributors.filter((one) => !now.contributors.some((other) => sameCredit(one, other)));
  const text = (one: Contributor) => `${one.name} (${roleName(one.role).toLowerCase()})`;
  const told = [
    // A translator who is no longer named says as much of the text as one who newly is; dropped matter is a change too.
    ...came.map((one) => ({ change: changeOfRole(one.role), detail: `new: ${text(one)}` })),
    ...went.map((one) => ({ change: changeOfRole(one.role), detail: `no longer: ${text(one)}` })),
  ];
  const byChange = Map.groupBy(told, (entry) => entry.change);
  return [...byChange].map(([change, entries]) =>
    ofRecord(change, entries.map(({ detail }) => detail).join(', ')),
  );
}

const DATA = ['description', 'keywords', 'subjects', 'audience', 'ageFrom', 'ageTo'] as const;

function editionChanges(old: EditionFields, now: EditionFields): Change[] {
  const plain = (['title', 'subtitle', 'language', 'imprint'] as const)
    .filter((field) => old[field].trim() !== now[field].trim())
    .map((field) => ofRecord(field, from(old[field], now[field])));
  const series = (edition: EditionFields) =>
    [edition.series, edition.seriesNumber].filter(Boolean).join(', ');
  const data = DATA.filter((field) => JSON.stringify(old[field]) !== JSON.stringify(now[field]));
  return [
    ...plain,
    ...contributorChanges(old, now),
    ...(series(old) === series(now) ? [] : [ofRecord('series', from(series(old), series(now)))]),
    ...(data.length === 0 ? [] : [ofRecord('data', data.map(fieldName).join(', '))]),
  ];
}

const trimText = (format: FormatFields) =>
  format.trimWidthUm === null || format.trimHeightUm === null
    ? ''
    : `${format.trimWidthUm / 1000} × ${format.trimHeightUm / 1000} mm`;

function trimChange(old: ComparedFormat, now: ComparedFormat): Change[] {
  const [was, is] = [trimText(old), trimText(now)];
  if (was === is || was === '' || is === '') return [];
  const off = Math.max(
    Math.abs((old.trimWidthUm ?? 0) - (now.trimWidthUm ?? 0)),
    Math.abs((old.trimHeightUm ?? 0) - (now.trimHeightUm ?? 0)),
  );
  return [ofRecord(off <= SHAVED_UM ? 'trim-shaved' : 'trim', from(was, is), [now.id])];
}

/** What differs of a format from the one it follows. A value that one side does not record is no difference. */
function formatChanges(old: ComparedFormat, now: ComparedFormat): Change[] {
  const changes: Change[] = [];
  const differ = <K extends keyof ComparedFormat>(
    field: K,
    change: Change['change'],
    name: (value: unknown) => string = String,
  ) => {
    const [was, is] = [old[field], now[field]];
    if (was === is || was === null || is === null || was === '' || is === '') return;
    changes.push(ofRecord(change, from(name(was), name(is)), [now.id]));
  };
  differ('formDetail', madeOf(now.form) === 'print' ? 'binding' : 'file-format', (code) =>
    formName({ form: now.form, formDetail: String(code) }),
  );
  differ('caseKind', 'binding');
  differ('largePrint', 'large-print', (on) => (on ? 'large print' : 'ordinary print'));
  differ('interiorColour', 'interior-colour');
  differ('paper', 'paper');
  differ('finish', 'paper');
  differ('pages', 'pages');
  const prices = (format: FormatFields) =>
    format.prices.map((price) => `${price.currency} ${price.amountMinor} ${price.tax}`).join();
  if (prices(old) !== prices(now)) changes.push(ofRecord('price', '', [now.id]));
  const further = now.channels.filter((name) => !old.channels.includes(name));
  if (further.length > 0) changes.push(ofRecord('channel', further.join(', '), [now.id]));
  return [...changes, ...trimChange(old, now)];
}

/** What the records say differs between an edition and the one it replaces, and which of its formats follow none. */
export function differencesOf(
  old: ComparedEdition,
  now: ComparedEdition,
): { changes: Change[]; addedIds: number[] } {
  const pairs = pairFormats(old.formats, now.formats);
  const added = now.formats.filter((format) => !pairs.has(format));
  return {
    changes: [
      ...editionChanges(old, now),
      ...now.formats.flatMap((format) => {
        const followed = pairs.get(format);
        return followed ? formatChanges(followed, format) : [];
      }),
    ],
    addedIds: added.map((format) => format.id),
  };
}
