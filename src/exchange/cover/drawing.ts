import type { PanelKind, Rect, Sheet } from '../../rules/geometry/types.ts';

export type Stroke = 'cut' | 'edge' | 'fold' | 'safe' | 'barcode';

export interface Label {
  text: string;
  /** The middle of the text. */
  xUm: number;
  yUm: number;
  sizeUm: number;
  /** Read from top to bottom, as on a spine. */
  turned: boolean;
}

/** A sheet as lines and words, for whichever file it becomes. Lengths in micrometres, y downwards. */
export interface CoverDrawing {
  title: string;
  widthUm: number;
  heightUm: number;
  boxes: readonly { stroke: Stroke; rect: Rect }[];
  folds: readonly { xUm: number; fromUm: number; toUm: number }[];
  labels: readonly Label[];
}

const LABEL_UM = 4_200;
const SMALL_UM = 2_800;

const NAMES: Record<PanelKind, string> = {
  'back cover': 'Back cover',
  spine: 'Spine',
  'front cover': 'Front cover',
  'back hinge': 'Hinge',
  'front hinge': 'Hinge',
  'back flap': 'Back flap',
  'front flap': 'Front flap',
};

/** '152.4 mm', exact to a micrometre. */
export function inMillimetres(um: number): string {
  return `${um / 1_000} mm`;
}

function middle(rect: Rect): { xUm: number; yUm: number } {
  return { xUm: rect.xUm + rect.widthUm / 2, yUm: rect.yUm + rect.heightUm / 2 };
}

/** A narrow strip carries its words turned, or none where even they do not fit. */
function wordsOf(rect: Rect, lines: readonly string[]): Label[] {
  const turned = rect.widthUm < 30_000;
  const room = turned ? rect.widthUm : rect.heightUm;
  const sizeUm = Math.min(LABEL_UM, Math.max(room / (lines.length * 2), 0));
  if (sizeUm < 900) return [];
  const { xUm, yUm } = middle(rect);
  return lines.map((text, i) => {
    const off = (i - (lines.length - 1) / 2) * sizeUm * 1.4;
    return { text, xUm: turned ? xUm - off : xUm, yUm: turned ? yUm : yUm + off, sizeUm, turned };
  });
}

function panelWords(sheet: Sheet): Label[] {
  return sheet.panels.flatMap((panel) => {
    const size = `${inMillimetres(panel.widthUm)} x ${inMillimetres(panel.heightUm)}`;
    const name = NAMES[panel.kind];
    return panel.widthUm < 30_000
      ? wordsOf(panel, [`${name} ${inMillimetres(panel.widthUm)}`])
      : wordsOf(panel, [name, size]);
  });
}

/** Cut or turn-in, folds, safe areas and the place of the bar code, with their names and sizes. */
export function coverDrawing(sheet: Sheet, title: string): CoverDrawing {
  const whole = { xUm: 0, yUm: 0, widthUm: sheet.widthUm, heightUm: sheet.heightUm };
  const { trimmed, edge, barcode } = sheet;
  const front = sheet.panels.find((panel) => panel.kind === 'front cover') ?? trimmed;
  const safe = sheet.panels.flatMap((panel) => (panel.safe ? [panel.safe] : []));
  const edgeWords = `${edge.kind === 'bleed' ? 'Bleed' : 'Turn-in'} ${inMillimetres(edge.um)}, whole sheet ${inMillimetres(sheet.widthUm)} x ${inMillimetres(sheet.heightUm)}`;
  return {
    title,
    widthUm: sheet.widthUm,
    heightUm: sheet.heightUm,
    boxes: [
      { stroke: 'edge', rect: whole },
      { stroke: 'cut', rect: trimmed },
      ...safe.map((rect) => ({ stroke: 'safe' as const, rect })),
      ...(barcode ? [{ stroke: 'barcode' as const, rect: barcode }] : []),
    ],
    folds: sheet.foldsUm.map((xUm) => ({ xUm, fromUm: 0, toUm: sheet.heightUm })),
    labels: [
      ...panelWords(sheet),
      ...(barcode ? wordsOf(barcode, ['Bar code', `${inMillimetres(barcode.widthUm)} wide`]) : []),
      {
        text: edgeWords,
        ...middle(front),
        yUm: front.yUm + SMALL_UM * 3,
        sizeUm: SMALL_UM,
        turned: false,
      },
    ],
  };
}
