/** Lengths are micrometres (1 in = 25,400 µm), from the top left corner of the sheet, y downwards. */
export interface Rect {
  xUm: number;
  yUm: number;
  widthUm: number;
  heightUm: number;
}

export type PanelKind =
  | 'back cover'
  | 'spine'
  | 'front cover'
  | 'back hinge'
  | 'front hinge'
  | 'back flap'
  | 'front flap';

export interface Panel extends Rect {
  kind: PanelKind;
  /** Where text and pictures that must not be cut or folded may stand; null where nothing fits. */
  safe: Rect | null;
}

export type SheetKind = 'paperback cover' | 'case' | 'jacket';

/** One printed sheet laid flat, the outside up. */
export interface Sheet {
  kind: SheetKind;
  /** The whole sheet with bleed or turn-in. */
  widthUm: number;
  heightUm: number;
  /** What remains after trimming or turning in. */
  trimmed: Rect;
  /** How far the print runs beyond it: bleed that is cut off, or paper that is turned in. */
  edge: { kind: 'bleed' | 'turn-in'; um: number };
  spineUm: number;
  panels: readonly Panel[];
  /** Where the sheet is folded, as distances from its left edge, ascending. */
  foldsUm: readonly number[];
  /** Lower right quadrant of the back cover near the spine (ISBN manual, STANDARDS A13); null where it does not fit. */
  barcode: Rect | null;
}

/** The printer's figures. Ours are starting points only (STANDARDS E1–E4): printers differ, and their template prevails. */
export interface PrinterFigures {
  bleedUm: number;
  /** Added to the book block for the cover itself. */
  coverAllowanceUm: number;
  safeMarginUm: number;
  /** Kept free on either side of the spine's folds. */
  spineMarginUm: number;
  /** Fewest pages for which the spine carries text. */
  spineTextFromPages: number;
  /** Added to the book block for the boards of a case. */
  boardUm: number;
  hingeUm: number;
  turnInUm: number;
  /** How far a board stands out at head and at foot. */
  overhangUm: number;
  /** Added to the trim width for the width of a board; may be negative. */
  boardWiderUm: number;
  flapUm: number;
  /** Added to the trim width for each side of a jacket. */
  jacketWiderUm: number;
  barcodeFromSpineUm: number;
  barcodeFromFootUm: number;
  /** The place of the bar code, number line and quiet zones included. */
  barcodeWidthUm: number;
  barcodeHeightUm: number;
  /** The spine is given to the nearest such step, as printers who measure in 1/32 in do; 0 for none. */
  spineStepUm: number;
  /** Books are filled up with blank pages to a multiple of this (STANDARDS E5). */
  pageMultiple: number;
}

/** How thick a paper is, as its maker states it: pages to the inch, or the thickness of one leaf. */
export type Bulk = { pagesPerInch: number } | { leafUm: number };

export interface Paper {
  name: string;
  bulk: Bulk;
  source: string;
}

/** The book inside: its trimmed page, its pages, its paper. */
export interface Book {
  trimWidthUm: number;
  trimHeightUm: number;
  pages: number;
  bulk: Bulk;
  rightToLeft: boolean;
}
