import { Refusal } from '../contract/refusal.ts';
import { REPORT_FINDING_KINDS, type ReportFinding } from '../contract/reports.ts';
import { formName } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import {
  type Difference,
  differenceKey,
  differences,
  type RecordedItem,
  type Report,
  tellsOf,
} from '../rules/reconcile.ts';
import { differenceSentence } from '../rules/reconcile-words.ts';
import { dayPlus } from '../rules/working-days.ts';
import type { ReadDb } from '../store/connection.ts';
import {
  openFindings,
  pricesOnChannel,
  type ReportedFormat,
  reportedFormats,
  type StoredFinding,
} from '../store/reports.ts';

export interface ReportingChannel {
  id: number;
  name: string;
  removalDays: number;
}

/** The channel whose report is read; throws NOT_FOUND. */
export function reportingChannel(db: ReadDb, id: number): ReportingChannel {
  const channel = db.one<ReportingChannel>(
    'SELECT id, name, removal_days AS removalDays FROM channel WHERE id = ?',
    id,
  );
  if (!channel) throw new Refusal('NOT_FOUND', `There is no channel ${id}.`, 'channelId');
  return channel;
}

/** The day a report tells of; throws STEP_REFUSED for one to come, or before a report that is kept. */
export function reportDay(
  db: ReadDb,
  channel: ReportingChannel,
  on: string | undefined,
  today: string,
): string {
  const day = on ?? today;
  if (day > today)
    throw new Refusal('STEP_REFUSED', `${day} is still to come; give the day of the report.`, 'on');
  const last = db.one<{ day: string | null }>(
    'SELECT max(on_date) AS day FROM channel_report WHERE channel_id = ?',
    channel.id,
  )?.day;
  if (last && last > day)
    throw new Refusal(
      'STEP_REFUSED',
      `A report of ${channel.name} of ${last} is kept already; one of ${day} tells nothing newer.`,
      'on',
    );
  return day;
}

function nameOf(format: ReportedFormat): string {
  if (format.title === null || format.form === null) return '';
  const edition = editionLabel({ title: format.title, number: format.number });
  return `${edition} · ${formName({ ...format, form: format.form, largePrint: format.largePrint === 1 })}`;
}

function endedOf({ cancelledOn, spentOn, retired }: ReportedFormat): RecordedItem['ended'] {
  if (cancelledOn !== null) return 'cancelled';
  if (spentOn !== null) return 'a spent number';
  return retired === 1 ? 'retired' : null;
}

/** What is on record of everything that a channel has, or that a report names. */
export function recordedItems(
  db: ReadDb,
  channel: ReportingChannel,
  isbns: readonly string[],
): RecordedItem[] {
  const prices = pricesOnChannel(db, channel.id);
  return reportedFormats(db, channel.id, isbns).map((format) => {
    const { standing, askedOn, promisedBy } = format;
    const expected = askedOn === null ? null : dayPlus(askedOn, channel.removalDays);
    const goneBy = standing === 'leaving' ? (promisedBy ?? expected) : null;
    return {
      formatId: format.formatId,
      isbn13: format.isbn13,
      name: nameOf(format),
      listing: standing === null ? null : { standing, reference: format.reference ?? '', goneBy },
      ended: endedOf(format),
      title: format.title ?? '',
      subtitle: format.subtitle ?? '',
      prices: (format.formatId === null ? undefined : prices.get(format.formatId)) ?? [],
      onSaleDate: format.onSaleDate,
    };
  });
}

const rank = ({ kind }: Pick<Difference, 'kind'>) => REPORT_FINDING_KINDS.indexOf(kind);

/** A report set against the record and the findings of earlier ones. */
export interface Reconciled {
  opened: Difference[];
  still: { stored: StoredFinding; now: Difference }[];
  closes: StoredFinding[];
}

/** Sets a report against the record: what is new, what is a finding already, and what it no longer tells. */
export function reconcile(db: ReadDb, channel: ReportingChannel, report: Report): Reconciled {
  const isbns = [...new Set(report.rows.flatMap(({ isbn13 }) => isbn13 ?? []))];
  const found = differences(report, recordedItems(db, channel, isbns)).sort((a, b) => rank(a) - rank(b));
  const open = new Map(openFindings(db, channel.id).map((finding) => [differenceKey(finding), finding]));
  const tells = tellsOf(report);
  const told = new Set(found.map(differenceKey));
  const pairs = found.map((now) => ({ now, stored: open.get(differenceKey(now)) }));
  return {
    opened: pairs.flatMap(({ now, stored }) => (stored ? [] : [now])),
    still: pairs.flatMap(({ now, stored }) => (stored ? [{ now, stored }] : [])),
    closes: [...open].flatMap(([key, finding]) => (!told.has(key) && tells(finding) ? [finding] : [])),
  };
}

/** A difference as the contract tells it; the work is looked up where the format is known. */
export function differenceOf(db: ReadDb, channel: ReportingChannel, told: Difference) {
  const place =
    told.formatId === null
      ? undefined
      : db.one<{ workId: number }>(
          'SELECT e.work_id AS workId FROM format f JOIN edition e ON e.id = f.edition_id WHERE f.id = ?',
          told.formatId,
        );
  return {
    kind: told.kind,
    sentence: differenceSentence(told, channel.name),
    hyphenated: shownIsbn(told.isbn13),
    workId: place?.workId ?? null,
    there: told.there,
    here: told.here,
  };
}

/** A finding as the contract tells it. */
export function findingOf(channel: ReportingChannel, stored: StoredFinding): ReportFinding {
  const { id, on, kind, workId, there, here, closedOn, taskId, taskTitle, taskStanding } = stored;
  const task =
    taskId === null || taskTitle === null || taskStanding === null
      ? null
      : { id: taskId, title: taskTitle, standing: taskStanding };
  const sentence = differenceSentence(stored, channel.name);
  return {
    id,
    on,
    kind,
    sentence,
    hyphenated: shownIsbn(stored.isbn13),
    workId,
    there,
    here,
    task,
    closedOn,
  };
}
