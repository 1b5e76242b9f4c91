import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { validateXML } from 'xmllint-wasm';
import type { OnixVersion, TagSet } from '../../../src/contract/onix.ts';

/** EDItEUR's schemas (ONIX for Books 3.0 rev. 8 and 3.1 rev. 2, code lists Issue 68), beside the project. */
const ONIX_DATA = join(import.meta.dirname, '../../../../shared/data/onix');

/** Why outside ONIX data cannot be used here, or null. */
export function onixDataMissing(): string | null {
  return existsSync(ONIX_DATA) ? null : `Skipped: EDItEUR's schemas and samples are not at ${ONIX_DATA}.`;
}

/** The text of one of EDItEUR's files. */
export const onixFile = (path: string): string => readFileSync(join(ONIX_DATA, path), 'utf8');

/** What the official schema has against messages; an empty list is a pass. */
export async function schemaErrors(
  messages: string[],
  version: OnixVersion,
  tags: TagSet,
): Promise<string[]> {
  const folder = `xsd${version}`;
  const preload = ['ONIX_BookProduct_CodeLists.xsd', 'ONIX_XHTML_Subset.xsd'].map((fileName) => ({
    fileName,
    contents: onixFile(`${folder}/${fileName}`),
  }));
  const result = await validateXML({
    xml: messages.map((contents, index) => ({ fileName: `${index}.xml`, contents })),
    schema: [
      { fileName: 'onix.xsd', contents: onixFile(`${folder}/ONIX_BookProduct_${version}_${tags}.xsd`) },
    ],
    preload,
    initialMemoryPages: 2048,
    maxMemoryPages: 16_384,
  });
  return result.errors.map((error) => error.rawMessage);
}
