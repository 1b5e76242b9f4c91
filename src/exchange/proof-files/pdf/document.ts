import type { WrappedPdfiumModule } from '@embedpdf/pdfium';
import { Refusal } from '../../../contract/refusal.ts';
import { type Engine, startEngine } from './engine.ts';
import { PdfPage } from './page.ts';
import { type Rect, rectOf } from './place.ts';
import type { Source } from './source.ts';

/** PDFium counts bytes in signed 32 bits. */
const MOST_BYTES = 2 ** 31 - 1;

/** FPDF_GetLastError: 3 is a file that is none or is damaged, 4 a password, 5 a protection it does not know. */
const PASSWORD = 4;
const SECURITY = 5;

/** A PDF that is open. Close it: its engine's memory goes with it. */
export interface PdfDocument {
  readonly engine: Engine;
  readonly handle: number;
  readonly pageCount: number;
  /** Opens a page, from 1; `userUnit` is points to a unit. @throws Error where the file holds no such page that can be read */
  page(number: number, userUnit?: number): PdfPage;
  /** Boxes of a page as its own or inherited entries give them, without opening it. */
  boxes(number: number): { media: Rect | null; crop: Rect | null; bleed: Rect | null; trim: Rect | null };
  /** An entry of the file's properties: 'Title'; empty where there is none. */
  property(name: string): string;
  /** The number of a page's object in the file; 0 where it has none. */
  objectNumber(number: number): number;
  /** '1.7' */
  readonly version: string;
  readonly encrypted: boolean;
  /** Scripts that the file names; those that hang elsewhere are not counted. */
  readonly scripts: number;
  readonly attachments: number;
  /** Its table of objects did not hold and was made anew. */
  readonly mended: boolean;
  close(): void;
}

/**
 * Opens a PDF without running anything in it.
 * @throws Refusal BAD_INPUT where it is no PDF, is damaged beyond reading, or wants a password
 */
export async function openPdf(source: Source): Promise<PdfDocument> {
  if (source.size > MOST_BYTES)
    throw new Refusal(
      'BAD_INPUT',
      'The PDF is larger than 2 GB, which is more than can be read: save it with smaller pictures.',
      'file',
    );
  const engine = await startEngine();
  const { lib } = engine;
  const access = giveAccess(engine, source);
  const handle = lib.FPDF_LoadCustomDocument(access, '');
  if (handle === 0) throw refused(lib);
  const pageCount = lib.FPDF_GetPageCount(handle);
  if (pageCount <= 0)
    throw new Refusal('BAD_INPUT', 'The PDF holds no page that can be read: export it again.', 'file');
  return {
    engine,
    handle,
    pageCount,
    page: (number, userUnit = 1) => new PdfPage(engine, handle, number, userUnit),
    boxes: (number) => ({
      media: pageBox(engine, handle, number, 0),
      crop: pageBox(engine, handle, number, 1),
      bleed: pageBox(engine, handle, number, 2),
      trim: pageBox(engine, handle, number, 3),
    }),
    property: (name) =>
      engine.text('utf-16le', (address, bytes) => lib.FPDF_GetMetaText(handle, name, address, bytes)),
    objectNumber: (number) => lib.EPDFDoc_GetPageObjectNumberByIndex(handle, number - 1),
    ...properties(engine, handle),
    close: () => lib.FPDF_CloseDocument(handle),
  };
}

function properties({ lib, integers }: Engine, handle: number) {
  const version = integers(1, (address) => lib.FPDF_GetFileVersion(handle, address))?.[0] ?? 0;
  return {
    version: version > 0 && version < 1000 ? `${Math.floor(version / 10)}.${version % 10}` : '',
    encrypted: lib.FPDF_GetSecurityHandlerRevision(handle) >= 0,
    scripts: Math.max(0, lib.FPDFDoc_GetJavaScriptActionCount(handle)),
    attachments: Math.max(0, lib.FPDFDoc_GetAttachmentCount(handle)),
    mended: !lib.FPDF_DocumentHasValidCrossReferenceTable(handle),
  };
}

function refused(lib: WrappedPdfiumModule): Refusal {
  const error = lib.FPDF_GetLastError();
  if (error === PASSWORD || error === SECURITY)
    return new Refusal(
      'BAD_INPUT',
      'The PDF is locked with a password and cannot be read: export it without one, since a printer cannot open it either.',
      'file',
    );
  return new Refusal(
    'BAD_INPUT',
    'The file is no PDF that can be read: it is damaged, cut short, or something else under this name. Export it again.',
    'file',
  );
}

/** FPDF_FILEACCESS: length, a function that copies a part, and its parameter; each 4 bytes. */
function giveAccess(engine: Engine, source: Source): number {
  const read = (_: number, position: number, address: number, size: number) =>
    source.read(position >>> 0, engine.bytes().subarray(address >>> 0, (address >>> 0) + (size >>> 0)))
      ? 1
      : 0;
  const access = engine.alloc(12);
  const fields = new DataView(engine.bytes().buffer, access, 12);
  fields.setUint32(0, source.size, true);
  fields.setUint32(4, engine.lib.pdfium.addFunction(read, 'iiiii'), true);
  fields.setUint32(8, 0, true);
  return access;
}

function pageBox(engine: Engine, handle: number, number: number, kind: number): Rect | null {
  return rectOf(
    engine.floats(4, (address) => engine.lib.EPDF_GetPageBoxByIndex(handle, number - 1, kind, address)),
  );
}
