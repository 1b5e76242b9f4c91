import type { Engine } from './engine.ts';
import { type Placing, type Rect, rectOf } from './place.ts';
import { type Picture, renderPage } from './render.ts';
import { type PageText, readText } from './text.ts';

/** One open page. Close it before the document. */
export class PdfPage {
  readonly engine: Engine;
  readonly handle: number;
  readonly number: number;
  readonly placing: Placing;
  #text: number | null = null;

  constructor(engine: Engine, document: number, number: number, userUnit: number) {
    const { lib } = engine;
    this.engine = engine;
    this.number = number;
    this.handle = lib.FPDF_LoadPage(document, number - 1);
    if (this.handle === 0) throw new Error(`Page ${number} cannot be opened.`);
    const shown = engine.floats(4, (address) => lib.FPDF_GetPageBoundingBox(this.handle, address));
    const turns = ((lib.FPDFPage_GetRotation(this.handle) % 4) + 4) % 4;
    this.placing = {
      shown: rectOf(shown) ?? A_LETTER,
      rotate: ([0, 90, 180, 270] as const)[turns as 0 | 1 | 2 | 3],
      userUnit,
    };
  }

  /** Size as shown, in points. */
  get widthPt(): number {
    return this.engine.lib.FPDF_GetPageWidthF(this.handle) * this.placing.userUnit;
  }

  get heightPt(): number {
    return this.engine.lib.FPDF_GetPageHeightF(this.handle) * this.placing.userUnit;
  }

  /** All text of the page as one string, lines parted by CR LF. */
  plainText(): string {
    const text = this.#textPage();
    const count = Math.min(this.engine.lib.FPDFText_CountChars(text), MOST_CHARACTERS);
    if (count <= 0) return '';
    return this.engine.text('utf-16le', (address) =>
      address === 0 ? (count + 1) * 2 : this.engine.lib.FPDFText_GetText(text, 0, count, address) * 2,
    );
  }

  /** The text with the place of every character. */
  text(): PageText {
    return readText(this.engine, this.#textPage(), this.placing, MOST_CHARACTERS);
  }

  /**
   * The page as it is shown, on white paper; smaller than asked where it would be larger than `mostPixels`; null where
   * it takes too long to draw.
   */
  render(dpi: number, mostPixels?: number): Picture | null {
    return renderPage(this, dpi, mostPixels);
  }

  close(): void {
    if (this.#text !== null) this.engine.lib.FPDFText_ClosePage(this.#text);
    this.engine.lib.FPDF_ClosePage(this.handle);
  }

  #textPage(): number {
    this.#text ??= this.engine.lib.FPDFText_LoadPage(this.handle);
    return this.#text;
  }
}

/** What a page without any usable box is taken to be by PDFium. */
const A_LETTER: Rect = { left: 0, bottom: 0, right: 612, top: 792 };

/** A page of a book has some 3,000 characters; a page of the smallest print 30,000. */
const MOST_CHARACTERS = 200_000;
