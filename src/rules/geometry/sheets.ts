import { blockThickness } from './spine.ts';
import type { Book, Panel, PanelKind, PrinterFigures, Rect, Sheet, SheetKind } from './types.ts';

interface Strip {
  kind: PanelKind;
  widthUm: number;
  /** Kept free at the left and right side of the strip. */
  marginUm: number;
}

interface Plan {
  kind: SheetKind;
  edge: Sheet['edge'];
  heightUm: number;
  spineUm: number;
  /** As a book that opens to the left, left to right; the other way round for one read from right to left. */
  strips: readonly Strip[];
}

function inner(panel: Rect, sideUm: number, endUm: number): Rect | null {
  const widthUm = panel.widthUm - 2 * sideUm;
  const heightUm = panel.heightUm - 2 * endUm;
  if (widthUm <= 0 || heightUm <= 0) return null;
  return { xUm: panel.xUm + sideUm, yUm: panel.yUm + endUm, widthUm, heightUm };
}

/** At the foot of the back cover, on the side of the spine (STANDARDS A13). */
function barcodeIn(panels: readonly Panel[], figures: PrinterFigures): Rect | null {
  const back = panels.find((panel) => panel.kind === 'back cover');
  const spine = panels.find((panel) => panel.kind === 'spine');
  const { barcodeFromSpineUm: fromSpineUm, barcodeFromFootUm: fromFootUm } = figures;
  const { barcodeWidthUm: widthUm, barcodeHeightUm: heightUm } = figures;
  if (!back || !spine || widthUm + fromSpineUm > back.widthUm || heightUm + fromFootUm > back.heightUm) {
    return null;
  }
  const spineRight = spine.xUm > back.xUm;
  const xUm = spineRight ? back.xUm + back.widthUm - fromSpineUm - widthUm : back.xUm + fromSpineUm;
  return { xUm, yUm: back.yUm + back.heightUm - fromFootUm - heightUm, widthUm, heightUm };
}

function lay(plan: Plan, book: Book, figures: PrinterFigures): Sheet {
  const strips = book.rightToLeft ? plan.strips.toReversed() : plan.strips;
  const edge = plan.edge.um;
  let xUm = edge;
  const panels: Panel[] = [];
  const foldsUm: number[] = [];
  for (const { kind, widthUm, marginUm } of strips) {
    if (panels.length > 0) foldsUm.push(xUm);
    const rect = { xUm, yUm: edge, widthUm, heightUm: plan.heightUm };
    const bare = kind.endsWith('hinge') || (kind === 'spine' && book.pages < figures.spineTextFromPages);
    panels.push({ kind, ...rect, safe: bare ? null : inner(rect, marginUm, figures.safeMarginUm) });
    xUm += widthUm;
  }
  return {
    kind: plan.kind,
    widthUm: xUm + edge,
    heightUm: plan.heightUm + 2 * edge,
    trimmed: { xUm: edge, yUm: edge, widthUm: xUm - edge, heightUm: plan.heightUm },
    edge: plan.edge,
    spineUm: plan.spineUm,
    panels,
    foldsUm,
    barcode: barcodeIn(panels, figures),
  };
}

/** The thickness of the block and what is added to it, at the printer's own step. */
function spineOf(book: Book, addedUm: number, { spineStepUm }: PrinterFigures): number {
  const exact = blockThickness(book.pages, book.bulk) + addedUm;
  return spineStepUm === 0 ? exact : Math.max(Math.round(exact / spineStepUm), 1) * spineStepUm;
}

/** A paperback's cover: both covers at trim size, the spine between them, bleed all round (STANDARDS E2). */
export function paperbackCover(book: Book, figures: PrinterFigures): Sheet {
  const spineUm = spineOf(book, figures.coverAllowanceUm, figures);
  const side = { widthUm: book.trimWidthUm, marginUm: figures.safeMarginUm };
  const strips: Strip[] = [
    { kind: 'back cover', ...side },
    { kind: 'spine', widthUm: spineUm, marginUm: figures.spineMarginUm },
    { kind: 'front cover', ...side },
  ];
  const edge = { kind: 'bleed' as const, um: figures.bleedUm };
  return lay({ kind: 'paperback cover', edge, heightUm: book.trimHeightUm, spineUm, strips }, book, figures);
}

/** The printed or cloth covering of a case: boards, hinges and spine, with paper to turn in all round (STANDARDS E3). */
export function caseCover(book: Book, figures: PrinterFigures): Sheet {
  const spineUm = spineOf(book, figures.boardUm, figures);
  const board = { widthUm: book.trimWidthUm + figures.boardWiderUm, marginUm: figures.safeMarginUm };
  const strips: Strip[] = [
    { kind: 'back cover', ...board },
    { kind: 'back hinge', widthUm: figures.hingeUm, marginUm: 0 },
    { kind: 'spine', widthUm: spineUm, marginUm: figures.spineMarginUm },
    { kind: 'front hinge', widthUm: figures.hingeUm, marginUm: 0 },
    { kind: 'front cover', ...board },
  ];
  const edge = { kind: 'turn-in' as const, um: figures.turnInUm };
  const heightUm = book.trimHeightUm + 2 * figures.overhangUm;
  return lay({ kind: 'case', edge, heightUm, spineUm, strips }, book, figures);
}

/** A jacket with two flaps around a case, bleed all round (STANDARDS E4). */
export function jacket(book: Book, figures: PrinterFigures): Sheet {
  const spineUm = spineOf(book, figures.boardUm, figures);
  const side = { widthUm: book.trimWidthUm + figures.jacketWiderUm, marginUm: figures.safeMarginUm };
  const flap = { widthUm: figures.flapUm, marginUm: figures.safeMarginUm };
  const strips: Strip[] = [
    { kind: 'back flap', ...flap },
    { kind: 'back cover', ...side },
    { kind: 'spine', widthUm: spineUm, marginUm: figures.spineMarginUm },
    { kind: 'front cover', ...side },
    { kind: 'front flap', ...flap },
  ];
  const edge = { kind: 'bleed' as const, um: figures.bleedUm };
  const heightUm = book.trimHeightUm + 2 * figures.overhangUm;
  return lay({ kind: 'jacket', edge, heightUm, spineUm, strips }, book, figures);
}
