import { z } from 'zod';
import type { RangeData } from '../../rules/isbn/range-data.ts';

/** Thrown for a file that is no usable range message; the message is one sentence. */
export class RangeMessageError extends Error {
  override readonly name = 'RangeMessageError';
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DATE_LINE =
  /^(?:[A-Z][a-z]{2}, )?([0-9]{1,2}) ([A-Z][a-z]{2}) ([0-9]{4})(?: ([0-9]{2}:[0-9]{2}:[0-9]{2}).*)?$/;

/** The day of a date line like 'Sat, 22 Aug 2026 17:51:37 BST' as YYYY-MM-DD; null where it is none. */
export function messageDay(line: string): string | null {
  const [, day = '', name = '', year = ''] = DATE_LINE.exec(line) ?? [];
  const month = String(MONTHS.indexOf(name) + 1).padStart(2, '0');
  const iso = `${year}-${month}-${day.padStart(2, '0')}`;
  return z.iso.date().safeParse(iso).success ? iso : null;
}

/** Day and time of day, for comparing two messages of the same agency. */
function moment(data: Pick<RangeData, 'date' | 'issued'>): string {
  return `${data.date} ${DATE_LINE.exec(data.issued)?.[4] ?? ''}`;
}

/** Throws RangeMessageError when a message is older than the table in use: ranges only ever grow. */
export function refuseOlder(
  data: Pick<RangeData, 'date' | 'issued'>,
  current: Pick<RangeData, 'date' | 'issued'>,
): void {
  if (moment(data) < moment(current))
    throw new RangeMessageError(
      `The range message of ${data.issued} is older than the table in use (${current.issued}): download a newer one.`,
    );
}

/** The text of resources/isbn-ranges.json: one prefix or group a line, so that a newer table shows as a small difference. */
export function writeRangeData(data: RangeData): string {
  const lines = (list: readonly unknown[]): string => list.map((entry) => JSON.stringify(entry)).join(',\n');
  const head = { source: data.source, serial: data.serial, issued: data.issued, date: data.date };
  const fields = Object.entries(head).map(([name, value]) => `"${name}": ${JSON.stringify(value)},`);
  return `{\n${fields.join('\n')}\n"prefixes": [\n${lines(data.prefixes)}\n],\n"groups": [\n${lines(data.groups)}\n]\n}\n`;
}
