import type { PagePicture, PdfFacts } from '../../../contract/proof-checks/facts.ts';
import { Refusal } from '../../../contract/refusal.ts';
import { told, unreadable, type Watch } from '../watch.ts';
import { openPdf, type PdfDocument } from './document.ts';
import { isbnsOn, mayHoldIsbn } from './numbers.ts';
import type { PdfPage } from './page.ts';
import { type PageSeen, pageSeen, unseenPage } from './page-facts.ts';
import { picturedPages, pictureOf, tellingPages } from './pictures.ts';
import type { Source } from './source.ts';
import type { Swept } from './sweep.ts';

/** Lines are kept of so many pages at either end: title page and the back of it, and an imprint at the end. */
const FIRST_PAGES = 16;
const LAST_PAGES = 4;
const MOST_PAGES = 20_000;
const MOST = { lines: 10_000, isbns: 1_000, fonts: 2_000, unread: 50 };
/** The engine is started anew so often; then the rest of the file is left. */
const MOST_FAILURES = 5;

const damaged = () =>
  unreadable(
    'The PDF is damaged, or made in a way that cannot be read safely: export it again from the program it comes from.',
  );

/** Opens a document; whatever goes wrong in the engine becomes one sentence. */
async function opened(source: Source): Promise<PdfDocument> {
  try {
    return await openPdf(source);
  } catch (error) {
    throw error instanceof Refusal ? error : damaged();
  }
}

/** Reads a PDF page by page. A page that ends the engine is left out and told; the others are read by a fresh one. */
export class PdfReader {
  readonly #source: Source;
  readonly #swept: Swept;
  readonly #watch: Watch;
  readonly #facts: PdfFacts;
  #pdf: PdfDocument;
  /** Pages that ended the engine: not opened again. */
  readonly #failed = new Set<number>();

  private constructor(source: Source, swept: Swept, watch: Watch, pdf: PdfDocument) {
    this.#source = source;
    this.#swept = swept;
    this.#watch = watch;
    this.#pdf = pdf;
    this.#facts = documentFacts(pdf, swept);
  }

  /** Throws BAD_INPUT where the file cannot be opened or has too many pages. */
  static async open(source: Source, swept: Swept, watch: Watch): Promise<PdfReader> {
    const pdf = await opened(source);
    if (pdf.pageCount > MOST_PAGES)
      throw unreadable(
        `The PDF says that it has ${pdf.pageCount} pages; at most ${MOST_PAGES} are read. Export it again, or give it in parts.`,
      );
    return new PdfReader(source, swept, watch, pdf);
  }

  facts(): PdfFacts {
    return this.#facts;
  }

  async readPages(): Promise<void> {
    const count = this.#pdf.pageCount;
    for (let number = 1; number <= count; number += 1) {
      told(this.#watch, number - 1, count, 'Reading pages');
      const boxes = this.#pdf.boxes(number);
      const seen = await this.#onPage(number, (page) => this.#read(page, pageSeen(page, boxes)));
      this.#facts.pages.push(seen?.facts ?? unseenPage(boxes));
    }
  }

  /** Looks at the first page; `otherwise` where that cannot be. */
  async onFirstPage<T>(look: (page: PdfPage) => Promise<T>, otherwise: T): Promise<T> {
    return (await this.#onPage(1, look)) ?? otherwise;
  }

  async pictures(): Promise<PagePicture[]> {
    const pages = picturedPages(this.#pdf.pageCount, tellingPages(this.#facts));
    const pictures: PagePicture[] = [];
    for (const [i, number] of pages.entries()) {
      told(this.#watch, i, pages.length, 'Drawing pages');
      const picture = await this.#onPage(number, pictureOf);
      if (picture) pictures.push(picture);
    }
    return pictures;
  }

  /** Adds what is kept beside the page itself. */
  #read(page: PdfPage, seen: PageSeen): PageSeen {
    const { lines, isbns, fonts } = this.#facts;
    const { number } = page;
    for (const font of seen.fonts)
      if (
        fonts.length < MOST.fonts &&
        !fonts.some((one) => one.name === font.name && one.embedded === font.embedded)
      )
        fonts.push({ ...font, firstPage: number });
    if (seen.unread !== null) this.#unread(seen.unread);
    const ofEnds = number <= FIRST_PAGES || number > this.#pdf.pageCount - LAST_PAGES;
    if (!ofEnds && !mayHoldIsbn(seen.text)) return seen;
    const text = page.text();
    if (ofEnds)
      lines.push(
        ...text.lines.slice(0, MOST.lines - lines.length).map((line) => ({ page: number, ...line })),
      );
    isbns.push(...isbnsOn(number, text).slice(0, MOST.isbns - isbns.length));
    return seen;
  }

  #unread(sentence: string): void {
    if (this.#facts.unread.length < MOST.unread) this.#facts.unread.push(sentence);
  }

  /** Opens a page and looks at it; null where that fails, which is told once for each page. */
  async #onPage<T>(number: number, look: (page: PdfPage) => T | Promise<T>): Promise<T | null> {
    if (this.#failed.has(number) || this.#failed.size >= MOST_FAILURES) return null;
    try {
      const unit = this.#swept.userUnits.get(this.#pdf.objectNumber(number)) ?? 1;
      const page = this.#pdf.page(number, unit);
      const seen = await look(page);
      page.close();
      return seen;
    } catch (error) {
      if (error instanceof Refusal) throw error;
      await this.#recover(number);
      return null;
    }
  }

  /** The engine may be left in any state: another one reads on. */
  async #recover(number: number): Promise<void> {
    this.#failed.add(number);
    this.#unread(
      this.#failed.size < MOST_FAILURES
        ? `Page ${number} could not be read: it is damaged or asks for too much.`
        : `Page ${number} and those after it could not be read: the file is damaged or asks for too much.`,
    );
    this.#pdf = await opened(this.#source);
  }
}

/** What is known of the file before its pages are read. */
function documentFacts(pdf: PdfDocument, swept: Swept): PdfFacts {
  const claim = pdf.property('GTS_PDFXConformance') || pdf.property('GTS_PDFXVersion') || swept.pdfx;
  return {
    of: 'pdf',
    version: pdf.version,
    encrypted: pdf.encrypted,
    pdfx: claim ? claim.slice(0, 100) : null,
    titleProperty: pdf.property('Title').slice(0, 1_000),
    pages: [],
    fonts: [],
    lines: [],
    isbns: [],
    barcodes: [],
    edges: null,
    scripts: Math.max(swept.scripts, pdf.scripts),
    attachments: pdf.attachments,
    unread: pdf.mended
      ? [
          'The file is damaged and was mended while it was read; pages may be missing. A printer may refuse it.',
        ]
      : [],
  };
}
