import { appendFileSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { PART_BYTES } from '../contract/files.ts';
import type { Catalogue } from './catalogue.ts';
import { Failure } from './failure.ts';

function trouble(path: string, error: unknown, what: string): Failure {
  const code = (error as { code?: unknown }).code;
  const why = typeof code === 'string' ? code : String(error);
  return new Failure({ code: 'DISK_TROUBLE', message: `${path} cannot be ${what} (${why}).` }, 2);
}

/** Lays a file of the user's ready for the catalogue; answers its id. */
export function putFile({ call }: Catalogue, path: string): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw trouble(path, error, 'read');
  }
  const name = basename(path);
  const part = (from: number) => bytes.subarray(from, from + PART_BYTES).toString('base64');
  const { file } = call('files.put', { name, part: part(0) });
  for (let from = PART_BYTES; from < bytes.length; from += PART_BYTES)
    call('files.put', { file, part: part(from) });
  return file;
}

/** Writes a file that the catalogue has made to a place of the user's, which holds it whole or stays as it was. */
export function fetchFile({ call }: Catalogue, file: string, path: string): void {
  const part = `${path}.part`;
  try {
    writeFileSync(part, '');
    for (let from: number | null = 0; from !== null; ) {
      const answer: { part: string; next: number | null } = call('files.get', { file, from });
      appendFileSync(part, Buffer.from(answer.part, 'base64'));
      from = answer.next;
    }
    renameSync(part, path);
  } catch (error) {
    rmSync(part, { force: true });
    throw error instanceof Failure ? error : trouble(path, error, 'written');
  }
}
