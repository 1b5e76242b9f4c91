import type { InputOf, OutputOf } from '../../src/contract/index.ts';
import type { TestCatalogue } from './catalogue.ts';

type Calls = Pick<TestCatalogue, 'call'>;

const PART = 1024 * 1024;

/** Lays a file ready and answers its id. */
export function stage({ call }: Calls, content: string | Uint8Array, name = 'list.csv'): string {
  const bytes = Buffer.from(content);
  const { file } = call('files.put', { name, part: bytes.subarray(0, PART).toString('base64') });
  for (let at = PART; at < bytes.length; at += PART)
    call('files.put', { file, part: bytes.subarray(at, at + PART).toString('base64') });
  return file;
}

/** The bytes of a file that the catalogue has made. */
export function fetched({ call }: Calls, file: string): Buffer {
  const parts: Buffer[] = [];
  for (let from: number | null = 0; from !== null; ) {
    const answer: OutputOf<'files.get'> = call('files.get', { file, from });
    parts.push(Buffer.from(answer.part, 'base64'));
    from = answer.next;
  }
  return Buffer.concat(parts);
}

/** The catalogue written as a file. */
export function exported(calls: Calls, as: InputOf<'exports.make'>['as']): Buffer {
  return fetched(calls, calls.call('exports.make', { as }).file);
}

/** Looks into a file and takes its columns as they were found, some of them said otherwise. */
export function settled(
  calls: Calls,
  file: string,
  said: Record<string, Partial<OutputOf<'sheets.look'>['columns'][number]>> = {},
): InputOf<'sheets.import'>['columns'] {
  return calls.call('sheets.look', { file }).columns.map((column) => {
    const { index, field, detail, reading } = { ...column, ...said[column.header] };
    return { index, field, detail, reading } as InputOf<'sheets.import'>['columns'][number];
  });
}

/** Imports a file with the columns as they were found. */
export function imported(
  calls: Calls,
  content: string | Uint8Array,
  options: Partial<InputOf<'sheets.import'>> = {},
  said: Parameters<typeof settled>[2] = {},
): OutputOf<'sheets.import'> {
  const file = stage(calls, content);
  return calls.call('sheets.import', { file, columns: settled(calls, file, said), ...options });
}
