import type { Engine } from './engine.ts';
import type { PdfPage } from './page.ts';
import type { Rect } from './place.ts';

/** PDFium's kinds of objects on a page. */
const TEXT = 1;
const PATH = 2;
const IMAGE = 3;
const FORM = 5;
/** A form within a form and so on: deeper ones are not looked into. */
const MOST_DEPTH = 12;
/** A page of a book has some hundreds of objects; a map some ten thousand. */
const MOST_OBJECTS = 100_000;
const MOST_IMAGES = 200;

/** a b c d e f of ISO 32000-1, 8.3.3. */
type Matrix = readonly [number, number, number, number, number, number];
const STRAIGHT: Matrix = [1, 0, 0, 1, 0, 0];

export interface FontSeen {
  name: string;
  embedded: boolean;
  drawn: boolean;
}

/** A picture on the page, in the page's units. */
export interface ImageSeen {
  /** Corners of what it covers. */
  rect: Rect;
  widthPx: number;
  heightPx: number;
  /** Pixels to 72 units, the lower of the two directions. */
  pixelsPer72: number;
  bitsPerPixel: number;
  /** FPDF_COLORSPACE: 1 and 4 are grey, 0 unknown. */
  colourSpace: number;
}

export interface ObjectsSeen {
  fonts: FontSeen[];
  images: ImageSeen[];
  /** Something is drawn in a colour, by its own statement. */
  coloured: boolean;
  /** There were more objects than are looked at. */
  more: boolean;
}

/** How far the strongest and the weakest of red, green and blue lie apart in a colour; process black turned into RGB has 4. */
export const CHROMA = 24;

/** Looks at every object of a page, also within forms. Colours beyond `trim` are cut off and do not count. */
export function lookAtObjects(page: PdfPage, trim: Rect): ObjectsSeen {
  const walk = new Walk(page, trim);
  const { lib } = page.engine;
  walk.all(
    lib.FPDFPage_CountObjects(page.handle),
    (i) => lib.FPDFPage_GetObject(page.handle, i),
    STRAIGHT,
    0,
  );
  return {
    fonts: [...walk.found.values()],
    images: walk.images,
    coloured: walk.coloured,
    more: walk.left <= 0,
  };
}

class Walk {
  /** By their address, which holds while the page is open. */
  readonly found = new Map<number, FontSeen>();
  readonly images: ImageSeen[] = [];
  coloured = false;
  left = MOST_OBJECTS;
  readonly #page: PdfPage;
  readonly #trim: Rect;
  readonly #engine: Engine;

  constructor(page: PdfPage, trim: Rect) {
    this.#trim = trim;
    this.#page = page;
    this.#engine = page.engine;
  }

  all(count: number, object: (index: number) => number, matrix: Matrix, depth: number): void {
    for (let i = 0; i < count && this.left > 0; i += 1) {
      this.left -= 1;
      this.#one(object(i), matrix, depth);
    }
  }

  #one(object: number, matrix: Matrix, depth: number): void {
    const { lib } = this.#engine;
    const type = lib.FPDFPageObj_GetType(object);
    if (type === TEXT) this.#text(object, matrix);
    else if (type === PATH) this.#path(object, matrix);
    else if (type === IMAGE) this.#image(object, matrix);
    else if (type === FORM && depth < MOST_DEPTH) {
      const inner = times(this.#matrix(object), matrix);
      this.all(
        lib.FPDFFormObj_CountObjects(object),
        (i) => lib.FPDFFormObj_GetObject(object, i),
        inner,
        depth + 1,
      );
    }
  }

  #text(object: number, matrix: Matrix): void {
    const { lib } = this.#engine;
    const font = lib.FPDFTextObj_GetFont(object);
    if (font !== 0 && !this.found.has(font)) this.found.set(font, this.#font(font));
    // 3 neither fills nor strokes: text laid over a scanned page.
    if (!this.coloured && lib.FPDFTextObj_GetTextRenderMode(object) % 4 !== 3)
      this.coloured = this.#isColour(object, matrix, 'Fill');
  }

  #font(font: number): FontSeen {
    const { lib, text, integers } = this.#engine;
    const name = text('utf-8', (address, bytes) => lib.FPDFFont_GetBaseFontName(font, address, bytes));
    const embedded = lib.FPDFFont_GetIsEmbedded(font) === 1;
    const data = integers(1, (address) => lib.FPDFFont_GetFontData(font, 0, 0, address));
    return { name: name.slice(0, 300), embedded, drawn: embedded && (data?.[0] ?? 0) === 0 };
  }

  #path(object: number, matrix: Matrix): void {
    if (this.coloured) return;
    const { lib, integers } = this.#engine;
    const [fill = 0, stroke = 0] =
      integers(2, (address) => lib.FPDFPath_GetDrawMode(object, address, address + 4)) ?? [];
    this.coloured =
      (fill > 0 && this.#isColour(object, matrix, 'Fill')) ||
      (stroke > 0 && this.#isColour(object, matrix, 'Stroke'));
  }

  #isColour(object: number, matrix: Matrix, part: 'Fill' | 'Stroke'): boolean {
    const { lib, integers } = this.#engine;
    const ask = part === 'Fill' ? lib.FPDFPageObj_GetFillColor : lib.FPDFPageObj_GetStrokeColor;
    const [red = 0, green = 0, blue = 0, alpha = 0] =
      integers(4, (at) => ask(object, at, at + 4, at + 8, at + 12)) ?? [];
    const chroma = Math.max(red, green, blue) - Math.min(red, green, blue);
    return alpha > 0 && chroma > CHROMA && this.#isWithin(object, matrix);
  }

  #isWithin(object: number, matrix: Matrix): boolean {
    const { lib, floats } = this.#engine;
    const [left = 0, bottom = 0, right = 0, top = 0] =
      floats(4, (at) => lib.FPDFPageObj_GetBounds(object, at, at + 4, at + 8, at + 12)) ?? [];
    const rect = covered(times([right - left, 0, 0, top - bottom, left, bottom], matrix));
    const { left: l, bottom: b, right: r, top: t } = this.#trim;
    return rect.left < r && rect.right > l && rect.bottom < t && rect.top > b;
  }

  #image(object: number, outer: Matrix): void {
    if (this.images.length >= MOST_IMAGES) return;
    const { lib, integers } = this.#engine;
    const facts = integers(7, (at) => lib.FPDFImageObj_GetImageMetadata(object, this.#page.handle, at));
    const [widthPx = 0, heightPx = 0, , , bitsPerPixel = 0, colourSpace = 0] = facts ?? [];
    const matrix = times(this.#matrix(object), outer);
    const [a, b, c, d] = matrix;
    const across = (widthPx * 72) / Math.hypot(a, b);
    const down = (heightPx * 72) / Math.hypot(c, d);
    if (widthPx === 0 || heightPx === 0 || !Number.isFinite(across) || !Number.isFinite(down)) return;
    this.images.push({
      rect: covered(matrix),
      widthPx: widthPx | 0,
      heightPx: heightPx | 0,
      pixelsPer72: Math.min(across, down),
      bitsPerPixel,
      colourSpace,
    });
  }

  #matrix(object: number): Matrix {
    const { lib, floats } = this.#engine;
    const values = floats(6, (address) => lib.FPDFPageObj_GetMatrix(object, address));
    return (values as unknown as Matrix | null) ?? STRAIGHT;
  }
}

/** The first matrix applied, then the second. */
function times([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix {
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}

/** What the unit square comes to cover, in which every image is drawn. */
function covered([a, b, c, d, e, f]: Matrix): Rect {
  const xs = [e, e + a, e + c, e + a + c];
  const ys = [f, f + b, f + d, f + b + d];
  return { left: Math.min(...xs), bottom: Math.min(...ys), right: Math.max(...xs), top: Math.max(...ys) };
}
