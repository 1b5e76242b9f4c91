import { createHash } from 'node:crypto';
import type { CheckState } from '../../../src/contract/proof-checks/facts.ts';
import type { FileKind } from '../../../src/contract/terms.ts';
import type { WriteDb } from '../../../src/store/connection.ts';
import { insertCheck } from '../../../src/store/proof-checks.ts';

const sha256 = (text: string | Uint8Array) => createHash('sha256').update(text).digest('hex');

/** A PNG of one pixel. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);

/** The hash of a file that holds its own name. */
export const hashOf = sha256;

/** Keeps a made check of a file whose content is its name, with lines of the given states; answers its id. */
export function seedCheck(
  db: WriteDb,
  formatId: number,
  given: { kind?: FileKind; fileName?: string; on?: string; states: readonly CheckState[] },
): number {
  const facts = JSON.stringify({ of: 'audio', files: [], titles: [], isbns: [], unread: [] });
  const fileName = given.fileName ?? 'interior.pdf';
  return insertCheck(db, {
    formatId,
    kind: given.kind ?? 'interior',
    fileName,
    bytes: 1_000,
    sha256: sha256(fileName),
    checkedOn: given.on ?? '2026-03-02',
    ruleSet: 1,
    facts: { json: facts, sha256: sha256(facts) },
    lines: given.states.map((state, index) => ({
      rule: `interior.line-${index + 1}`,
      label: `Line ${index + 1}`,
      state,
      expected: 'on record',
      found: 'in the file',
      advice: '',
      page: state === 'differs' ? 1 : null,
      box: state === 'differs' ? '{"xPt":10,"yPt":20,"widthPt":30,"heightPt":10}' : null,
    })),
    pictures: [{ page: 1, widthPx: 1, heightPx: 1, png: PIXEL, sha256: sha256(PIXEL) }],
  });
}
