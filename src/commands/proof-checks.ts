import { type FileFacts, type Reading, reading } from '../contract/proof-checks/facts.ts';
import { Refusal } from '../contract/refusal.ts';
import { fileKindName, fileKindsOf, formName, madeOf } from '../contract/terms.ts';
import { needCheck, sha256Of, summaryOf } from '../records/proof-checks.ts';
import { proofRecord, seenIsbns } from '../records/proof-record.ts';
import { checkFile, RULE_SET } from '../rules/proof-check/index.ts';
import type { StoredFormat } from '../store/formats.ts';
import { insertCheck, insertReason, lineById } from '../store/proof-checks.ts';
import type { Staging } from '../store/staging.ts';
import type { Commands } from './context.ts';
import { needFormat } from './formats.ts';

/** What was read is bounded where it is made; a file made by hand is bounded here. */
const MOST_READING_BYTES = 128 * 1024 * 1024;

/** What a reader laid ready; throws BAD_INPUT for any other file. */
function takeReading(files: Staging, id: string): Reading {
  const wrong = () =>
    new Refusal('BAD_INPUT', 'This is not what was read from a file; read the file again.', 'reading');
  if (files.size(id) > MOST_READING_BYTES) throw wrong();
  let plain: unknown;
  try {
    plain = JSON.parse(Buffer.from(files.read(id)).toString('utf8'));
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw wrong();
  }
  const parsed = reading.safeParse(plain);
  if (!parsed.success) throw wrong();
  return parsed.data;
}

function refuseUnfit(stored: StoredFormat, kind: Parameters<typeof fileKindName>[0]): void {
  const name = formName(stored);
  if (stored.standing === 'retired' || stored.standing === 'cancelled')
    throw new Refusal(
      'FIELD_LOCKED',
      `${name} is ${stored.standing}; it can be read for ever and changed never.`,
      'formatId',
    );
  const kinds = fileKindsOf(madeOf(stored.form));
  if (!kinds.includes(kind))
    throw new Refusal(
      'BAD_INPUT',
      `${name} has no ${fileKindName(kind)}; check ${kinds.map((one) => `its ${fileKindName(one)}`).join(' or ')}.`,
      'kind',
    );
}

/** Pictures as they are kept: bytes with their hash, one a page. */
function picturesOf({ pictures }: Reading) {
  const byPage = new Map(pictures.map((picture) => [picture.page, picture]));
  return [...byPage.values()].map(({ page, widthPx, heightPx, png }) => {
    const bytes = Buffer.from(png, 'base64');
    return { page, widthPx, heightPx, png: bytes, sha256: sha256Of(bytes) };
  });
}

const written = (facts: FileFacts) => {
  const json = JSON.stringify(facts);
  return { json, sha256: sha256Of(json) };
};

export const proofCheckCommands = {
  'proofChecks.record': ({ db, today, files }, { formatId, kind, reading: staged }) => {
    const stored = needFormat(db, formatId);
    refuseUnfit(stored, kind);
    const read = takeReading(files, staged);
    const record = proofRecord(db, formatId, seenIsbns(read.facts));
    const lines = checkFile(kind, read.facts, record);
    const checkId = insertCheck(db, {
      formatId,
      kind,
      fileName: read.fileName,
      bytes: read.bytes,
      sha256: read.sha256,
      checkedOn: today,
      ruleSet: RULE_SET,
      facts: written(read.facts),
      lines: lines.map(({ check, box, ...line }) => ({
        ...line,
        rule: check,
        box: box === null ? null : JSON.stringify(box),
      })),
      pictures: picturesOf(read),
    });
    return summaryOf(needCheck(db, checkId));
  },

  'proofChecks.reason': ({ db, today }, { lineId, reason }) => {
    const line = lineById(db, lineId);
    if (!line) throw new Refusal('NOT_FOUND', `There is no line ${lineId} of a check.`, 'lineId');
    if (line.state !== 'differs')
      throw new Refusal(
        'STEP_REFUSED',
        `${line.label} does not differ from the record, so no reason is asked for.`,
        'lineId',
      );
    if (line.reason !== null)
      throw new Refusal(
        'ALREADY_EXISTS',
        `A reason was given for ${line.label} on ${line.givenOn}; it is kept as it was given.`,
        'reason',
      );
    insertReason(db, line, reason, today);
    return { checkId: line.checkId, open: needCheck(db, line.checkId).open };
  },
} satisfies Commands<'proofChecks.record' | 'proofChecks.reason'>;
