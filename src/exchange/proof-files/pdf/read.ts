import type { Box, PagePicture, PdfFacts } from '../../../contract/proof-checks/facts.ts';
import { told, type Watch } from '../watch.ts';
import type { PdfPage } from './page.ts';
import { PdfReader } from './reader.ts';
import { fileSource } from './source.ts';
import { sweep } from './sweep.ts';

/** What is seen on the first page of a cover, by whoever knows covers. */
export type SheetFacts = Pick<PdfFacts, 'barcodes' | 'edges'>;
const NO_SHEET: SheetFacts = { barcodes: [], edges: null };

export interface PdfOptions extends Watch {
  /** Looks at the first page as the sheet of a cover, within its bleed box where it states one; left out for an interior. */
  sheet?: ((page: PdfPage, bleed: Box | null) => Promise<SheetFacts>) | undefined;
}

/**
 * Reads all that is held against the record of a PDF, page by page; nothing in it is run. What cannot be read of it is
 * told in `unread`. Throws BAD_INPUT where nothing can be read, and CANCELLED once it was called off.
 */
export async function readPdf(
  path: string,
  options: PdfOptions,
): Promise<{ facts: PdfFacts; pictures: PagePicture[] }> {
  const source = fileSource(path);
  try {
    const swept = sweep(source, (done) => told(options, done, source.size, 'Looking through the file'));
    const reader = await PdfReader.open(source, swept, options);
    await reader.readPages();
    const { sheet: look } = options;
    const bleed = reader.facts().pages[0]?.bleed ?? null;
    const sheet = look ? await reader.onFirstPage((page) => look(page, bleed), NO_SHEET) : NO_SHEET;
    const pictures = await reader.pictures();
    return { facts: { ...reader.facts(), ...sheet }, pictures };
  } finally {
    source.close();
  }
}
