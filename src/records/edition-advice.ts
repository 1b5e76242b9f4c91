import type { EditionAdvice, StatedChanges } from '../contract/edition-advice.ts';
import type { Edition } from '../contract/editions.ts';
import type { Format } from '../contract/formats.ts';
import { Refusal } from '../contract/refusal.ts';
import { formName, madeOf } from '../contract/terms.ts';
import {
  type AdvisedFormat,
  adviseFormats,
  type Change,
  needsEdition,
  overallOf,
  textChange,
} from '../rules/edition-advice/advise.ts';
import { type ComparedEdition, differencesOf } from '../rules/edition-advice/differences.ts';
import { ASKED, DRAFT_TO_DO, headlineOf, REPRINT_TO_DO } from '../rules/edition-advice/headline.ts';
import { CAUTION } from '../rules/edition-advice/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionById } from '../store/editions.ts';
import { editionFacts } from './editions.ts';

function needFacts(db: ReadDb, id: number): Edition {
  const stored = editionById(db, id);
  const facts = stored && editionFacts(db, [stored])[0];
  if (!facts) throw new Refusal('NOT_FOUND', `There is no edition ${id}.`, 'editionId');
  return facts;
}

const running = (edition: Edition): Format[] =>
  edition.formats.filter((format) => format.standing !== 'cancelled');

const WAS_ON_SALE: readonly string[] = ['live', 'retiring', 'retired'];

function compared(edition: Edition): ComparedEdition {
  return {
    ...edition,
    formats: running(edition).map((format) => ({
      ...format,
      channels: format.listings.map((listing) => listing.channelName),
    })),
  };
}

/** What makes a further format a product of its own beside those there are. */
function addedBy(
  format: { form: string; largePrint: boolean },
  others: readonly { form: string }[],
): Change['change'] {
  if (format.largePrint) return 'large-print';
  return madeOf(format.form) !== 'print' && others.some((other) => other.form === format.form)
    ? 'file-format'
    : 'form';
}

function advisedFormat({ id, name, form, hyphenated }: Format): AdvisedFormat {
  return { id, name, made: madeOf(form), hyphenated };
}

/** Refuses formats that are not of the edition, so that a slip is not taken for a silent nothing. */
function statedOf(stated: StatedChanges, formats: readonly Format[]): Change[] {
  const own = new Set(formats.map((format) => format.id));
  for (const [index, { formatIds }] of stated.changes.entries()) {
    const stranger = formatIds.find((id) => !own.has(id));
    if (stranger !== undefined)
      throw new Refusal(
        'NOT_FOUND',
        `Format ${stranger} does not belong to this edition.`,
        `stated.changes.${index}.formatIds`,
      );
  }
  return [
    ...textChange(stated.text),
    ...stated.changes.map(
      ({ change, formatIds }): Change => ({
        change,
        formatIds: formatIds.length === 0 ? null : formatIds,
        detail: '',
        told: 'stated',
      }),
    ),
  ];
}

function ponder(edition: Edition, stated: StatedChanges): { formats: AdvisedFormat[]; changes: Change[] } {
  const formats = running(edition);
  const added = stated.added.map(
    (given): AdvisedFormat => ({
      id: null,
      name: formName(given),
      made: madeOf(given.form),
      hyphenated: null,
      addedBy: addedBy(given, formats),
    }),
  );
  return { formats: [...formats.map(advisedFormat), ...added], changes: statedOf(stated, formats) };
}

function compare(
  edition: Edition,
  old: Edition,
  stated: StatedChanges,
): { formats: AdvisedFormat[]; changes: Change[] } {
  const formats = running(edition);
  const { changes, addedIds } = differencesOf(compared(old), compared(edition));
  return {
    formats: formats.map((format) => ({
      ...advisedFormat(format),
      ...(addedIds.includes(format.id) ? { addedBy: addedBy(format, running(old)) } : {}),
    })),
    changes: [...changes, ...statedOf(stated, formats)],
  };
}

/**
 * New edition or reprint: the advice on each format. An edition that is or was on sale is judged by what is
 * stated of a coming change; a draft by its difference to the edition it replaces, and what is stated beside.
 * Throws NOT_FOUND, or NOT_READY for an edition that was never on sale and replaces none.
 */
export function editionAdvice(db: ReadDb, editionId: number, stated: StatedChanges): EditionAdvice {
  const edition = needFacts(db, editionId);
  const onSale = edition.formats.some((format) => WAS_ON_SALE.includes(format.standing));
  if (!onSale && edition.replacesId === null)
    throw new Refusal(
      'NOT_READY',
      `${edition.label} was never on sale and replaces no other edition, so there is nothing to compare: each of its formats takes a number of its own.`,
      'editionId',
    );
  const mode = onSale ? 'pondering' : 'draft';
  const old = onSale ? edition : needFacts(db, edition.replacesId ?? editionId);
  const facts = onSale ? ponder(edition, stated) : compare(edition, old, stated);
  const formats = adviseFormats(facts.formats, facts.changes, stated.wish);
  const overall = overallOf(formats);
  const keeps = formats.some((format) => format.verdict !== 'new');
  const askedFirst =
    stated.text === null && formats.some((format) => format.verdict !== 'new' && format.formatId !== null);
  return {
    editionId,
    mode,
    against: old.label,
    overall,
    headline: headlineOf(overall, formats),
    needsEdition: needsEdition(formats),
    asked: askedFirst ? ASKED : null,
    formats,
    caution: CAUTION,
    toDo: keeps ? [...(mode === 'draft' && overall === 'same' ? DRAFT_TO_DO : REPRINT_TO_DO)] : [],
  };
}
