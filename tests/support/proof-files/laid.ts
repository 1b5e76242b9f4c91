import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Reading } from '../../../src/contract/proof-checks/facts.ts';
import type { FileKind } from '../../../src/contract/terms.ts';
import { readFile } from '../../../src/exchange/proof-files/read.ts';

/** Lays bytes down as a file, reads it as a final file of a kind, and takes it away again. */
export async function readBytes(bytes: Uint8Array, kind: FileKind, fileName = 'file'): Promise<Reading> {
  const folder = mkdtempSync(join(tmpdir(), 'proof-file-'));
  try {
    const path = join(folder, fileName);
    writeFileSync(path, bytes);
    return await readFile(path, { kind, step: () => {} });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The sentence with which a file is refused; throws where it is read. */
export async function refusalOf(bytes: Uint8Array, kind: FileKind): Promise<string> {
  const read = await readBytes(bytes, kind).catch((error: Error) => error);
  if (!(read instanceof Error)) throw new Error('The file was read.');
  if (read.name !== 'Refusal') throw read;
  return read.message;
}
