import { readFileSync } from 'node:fs';
import type { Errands } from './context.ts';

/** As much of the log as a letter can carry. */
const SHOWN_BYTES = 64 * 1024;

/** The newest whole lines of a text file, at most `bytes` of them; empty when there is no such file. */
function newestLines(file: string, bytes: number): string {
  let whole: Buffer;
  try {
    whole = readFileSync(file);
  } catch {
    // No log means that no error was noted.
    return '';
  }
  if (whole.byteLength <= bytes) return whole.toString('utf8');
  const part = whole.subarray(whole.byteLength - bytes);
  return part.subarray(part.indexOf(10) + 1).toString('utf8');
}

export const programErrands = {
  'program.log': ({ log }) => ({ file: log, text: log === null ? '' : newestLines(log, SHOWN_BYTES) }),
} satisfies Errands<'program.log'>;
