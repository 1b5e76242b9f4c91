import { Refusal } from '../contract/refusal.ts';
import { fileKindsOf, formName, madeOf } from '../contract/terms.ts';
import {
  keptFacts,
  keptLines,
  needCheck,
  picturedPages,
  sha256Of,
  summaryOf,
} from '../records/proof-checks.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionById } from '../store/editions.ts';
import { filesOfFormats } from '../store/format-files.ts';
import { formatById } from '../store/formats.ts';
import { checksOfFormat, picturesOf, type StoredCheck } from '../store/proof-checks.ts';
import type { Queries } from './context.ts';

/** The format with its edition; throws NOT_FOUND. */
function placeOf(db: ReadDb, formatId: number) {
  const format = formatById(db, formatId);
  const edition = format && editionById(db, format.editionId);
  if (!format || !edition) throw new Refusal('NOT_FOUND', `There is no format ${formatId}.`, 'formatId');
  return { format, edition };
}

/** The newest earlier check of another file of the same kind, where the check right before was of another. */
function otherThanBefore(db: ReadDb, stored: StoredCheck) {
  const before = checksOfFormat(db, stored.formatId).find(
    (check) => check.kind === stored.kind && check.id < stored.id,
  );
  return before && before.sha256 !== stored.sha256
    ? { fileName: before.fileName, checkedOn: before.checkedOn }
    : null;
}

/** Throws CATALOGUE_DAMAGED where a picture is not the one that was kept. */
function checkPicture(stored: StoredCheck, { page, png }: { page: number; png: Uint8Array }): void {
  const told = JSON.parse(stored.pictures) as { page: number; sha256: string }[];
  if (told.find((one) => one.page === page)?.sha256 === sha256Of(png)) return;
  throw new Refusal(
    'CATALOGUE_DAMAGED',
    `The picture of page ${page} of ${stored.fileName} is not the one that was kept; check the file again.`,
  );
}

export const proofCheckQueries = {
  'proofChecks.list': (context, { formatId, asOf }) => {
    const db = context.on(asOf);
    const { format, edition } = placeOf(db, formatId);
    const checks = checksOfFormat(db, formatId).map(summaryOf);
    const files = filesOfFormats(db, [formatId]);
    return {
      workId: edition.workId,
      editionId: edition.id,
      formatName: formName(format),
      running: format.standing !== 'retired' && format.standing !== 'cancelled',
      kinds: fileKindsOf(madeOf(format.form)).map((kind) => {
        const final = files.find((file) => file.kind === kind && file.ended === null);
        return {
          kind,
          final: final ?? null,
          inForce: checks.find((check) => check.kind === kind && check.inForce)?.id ?? null,
        };
      }),
      checks,
    };
  },

  'proofChecks.show': (context, { checkId, asOf }) => {
    const db = context.on(asOf);
    const stored = needCheck(db, checkId);
    const { format, edition } = placeOf(db, stored.formatId);
    const { facts, intact } = keptFacts(db, stored);
    return {
      ...summaryOf(stored),
      workId: edition.workId,
      editionId: edition.id,
      formatName: formName(format),
      lines: keptLines(db, checkId),
      pages: facts.of === 'pdf' ? facts.pages.length : null,
      pictured: picturedPages(db, checkId, facts),
      intact,
      otherThanBefore: otherThanBefore(db, stored),
    };
  },

  'proofChecks.pictures': ({ db }, { checkId, pages }) => {
    const stored = needCheck(db, checkId);
    const pictures = picturesOf(db, checkId, pages);
    for (const picture of pictures) checkPicture(stored, picture);
    return {
      pictures: pictures.map(({ page, png }) => ({ page, png: Buffer.from(png).toString('base64') })),
    };
  },
} satisfies Queries<'proofChecks.list' | 'proofChecks.show' | 'proofChecks.pictures'>;
