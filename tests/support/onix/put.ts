import { PART_BYTES } from '../../../src/contract/files.ts';
import type { TestCatalogue } from '../catalogue.ts';

/** Lays a file ready for the catalogue; answers its id. */
export function putFile(
  catalogue: TestCatalogue,
  content: string | Uint8Array,
  name = 'message.xml',
): string {
  const bytes = Buffer.from(content);
  let file = '';
  for (let at = 0; at === 0 || at < bytes.length; at += PART_BYTES) {
    const part = bytes.subarray(at, at + PART_BYTES).toString('base64');
    file = catalogue.call('files.put', file ? { file, part } : { name, part }).file;
  }
  return file;
}
