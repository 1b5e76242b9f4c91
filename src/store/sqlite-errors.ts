import { Refusal, type RefusalCode, refusalCode } from '../contract/refusal.ts';

const BY_CODE: [prefix: string, code: RefusalCode, message: string][] = [
  ['SQLITE_FULL', 'DISK_TROUBLE', 'The disk is full; nothing was saved. Make room and try again.'],
  [
    'SQLITE_READONLY',
    'DISK_TROUBLE',
    'The catalogue file or its folder cannot be written; nothing was saved. Check its permissions.',
  ],
  [
    'SQLITE_IOERR',
    'DISK_TROUBLE',
    'The disk did not take the change; nothing was saved. Check that the drive is still there and sound.',
  ],
  [
    'SQLITE_CANTOPEN',
    'DISK_TROUBLE',
    'The catalogue file cannot be opened; check the folder and its permissions.',
  ],
  [
    'SQLITE_BUSY',
    'CATALOGUE_IN_USE',
    'Another program holds the catalogue file; close it there and try again.',
  ],
  [
    'SQLITE_CORRUPT',
    'CATALOGUE_DAMAGED',
    'The catalogue file is damaged; restore the newest backup beside it.',
  ],
  [
    'SQLITE_NOTADB',
    'CATALOGUE_FOREIGN',
    'This file is not a catalogue file of Edition Ledger; choose another file.',
  ],
];

const FOLDER_TROUBLE = new Set([
  'EACCES',
  'EPERM',
  'EROFS',
  'ENOSPC',
  'ENOTDIR',
  'EEXIST',
  'ENOENT',
  'EISDIR',
  'EIO',
  'EBUSY',
]);

/** The SQLite error in an error or its cause (drizzle wraps some). */
function sqliteError(error: unknown): { code: string; message: string } | null {
  for (let at = error; at instanceof Error; at = at.cause) {
    const code = (at as { code?: unknown }).code;
    if (typeof code === 'string' && code.startsWith('SQLITE_')) return { code, message: at.message };
  }
  return null;
}

/**
 * Turns SQLite's errors into refusals, here and nowhere else. A trigger's message starts with a refusal code
 * and a colon; what is not an expected refusal is given back as it came.
 */
export function refusalOf(error: unknown): unknown {
  if (error instanceof Refusal) return error;
  const sqlite = sqliteError(error);
  if (!sqlite) {
    const code = (error as { code?: unknown } | null)?.code;
    return typeof code === 'string' && FOLDER_TROUBLE.has(code)
      ? new Refusal(
          'DISK_TROUBLE',
          `The folder of the catalogue file cannot be used (${String(code)}); choose another place.`,
        )
      : error;
  }
  const [word, sentence] = sqlite.message.split(/: (.*)/s);
  const raised = refusalCode.safeParse(word);
  if (raised.success && sentence)
    return new Refusal(raised.data, sentence[0]?.toUpperCase() + sentence.slice(1));
  // A header that names a format SQLite does not know has no code of its own.
  const code = sqlite.message === 'unsupported file format' ? 'SQLITE_CORRUPT' : sqlite.code;
  const known = BY_CODE.find(([prefix]) => code.startsWith(prefix));
  return known ? new Refusal(known[1], known[2]) : error;
}

/** Whether a change was turned away because it does not fit the rows that are there. */
export function isConstraint(error: unknown): boolean {
  return sqliteError(error)?.code.startsWith('SQLITE_CONSTRAINT') ?? false;
}
