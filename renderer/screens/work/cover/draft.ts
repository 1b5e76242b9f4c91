import type { GivenFigures } from '../../../../src/contract/covers.ts';
import type { InputOf, OutputOf } from '../../../../src/contract/index.ts';

export type Paper = OutputOf<'covers.papers'>['papers'][number];
export type SheetKind = OutputOf<'covers.draw'>['sheet']['kind'];

/** Stands for a paper of which only the pages to the inch are known. */
export const OTHER_PAPER = 'other';

/** What is chosen in the dialog; a number is undefined while its field is empty or unreadable. */
export interface CoverDraft {
  /** Place in the list of papers, or OTHER_PAPER. */
  paper: string;
  pagesPerInch: number | undefined;
  leafUm: number | undefined;
  paperName: string;
  pages: number | undefined;
  trimWidthUm: number | undefined;
  trimHeightUm: number | undefined;
  sheet: SheetKind | undefined;
  figures: GivenFigures;
}

/** The paper the format names, where the list has it; otherwise the first. */
export function firstDraft(
  papers: readonly Paper[],
  format: { paper: string; pages: number | null; trimWidthUm: number | null; trimHeightUm: number | null },
): CoverDraft {
  const named = format.paper.trim().toLowerCase();
  const at = papers.findIndex((paper) => paper.name.toLowerCase() === named);
  return {
    paper: String(Math.max(at, 0)),
    pagesPerInch: undefined,
    leafUm: undefined,
    paperName: '',
    pages: format.pages ?? undefined,
    trimWidthUm: format.trimWidthUm ?? undefined,
    trimHeightUm: format.trimHeightUm ?? undefined,
    sheet: undefined,
    figures: {},
  };
}

/** How thick the other paper is, as it was typed: pages to the inch, or else the thickness of a leaf. */
export function otherBulk({ pagesPerInch, leafUm }: CoverDraft): Paper['bulk'] | undefined {
  if (pagesPerInch !== undefined) return { pagesPerInch };
  return leafUm === undefined ? undefined : { leafUm };
}

/** What to ask the host for, or undefined while something it needs is missing. */
export function drawInput(
  formatId: number,
  draft: CoverDraft,
  papers: readonly Paper[],
  as: 'svg' | 'pdf',
): InputOf<'covers.draw'> | undefined {
  const { pages, sheet, figures, trimWidthUm, trimHeightUm } = draft;
  const bulk = draft.paper === OTHER_PAPER ? otherBulk(draft) : papers[Number(draft.paper)]?.bulk;
  if (!bulk || pages === undefined || trimWidthUm === undefined || trimHeightUm === undefined)
    return undefined;
  const trim = { widthUm: trimWidthUm, heightUm: trimHeightUm };
  return { formatId, as, bulk, pages, trim, figures, ...(sheet ? { sheet } : {}) };
}

/** The figures that a printer may state otherwise, with what they mean, for the kind of sheet they matter to. */
export const FIGURES: readonly { key: LengthKey; label: string; for: readonly SheetKind[] }[] = [
  { key: 'bleedUm', label: 'Bleed', for: ['paperback cover', 'jacket'] },
  { key: 'coverAllowanceUm', label: 'Allowance for the cover', for: ['paperback cover'] },
  { key: 'boardUm', label: 'Added to the spine for the boards', for: ['case', 'jacket'] },
  { key: 'hingeUm', label: 'Hinge', for: ['case'] },
  { key: 'turnInUm', label: 'Turn-in', for: ['case'] },
  { key: 'overhangUm', label: 'Boards stand out at head and foot', for: ['case', 'jacket'] },
  { key: 'flapUm', label: 'Flap', for: ['jacket'] },
  { key: 'jacketWiderUm', label: 'Jacket wider than the trim', for: ['jacket'] },
  { key: 'safeMarginUm', label: 'Safe margin', for: ['paperback cover', 'case', 'jacket'] },
  { key: 'boardWiderUm', label: 'Boards wider than the trim', for: ['case'] },
  {
    key: 'spineStepUm',
    label: 'Step the spine is given in; 0 for none',
    for: ['paperback cover', 'case', 'jacket'],
  },
  {
    key: 'barcodeWidthUm',
    label: 'Bar code, width with its clear sides',
    for: ['paperback cover', 'case', 'jacket'],
  },
  {
    key: 'barcodeHeightUm',
    label: 'Bar code, height with its number line',
    for: ['paperback cover', 'case', 'jacket'],
  },
  { key: 'barcodeFromSpineUm', label: 'Bar code from the spine', for: ['paperback cover', 'case', 'jacket'] },
  { key: 'barcodeFromFootUm', label: 'Bar code from the foot', for: ['paperback cover', 'case', 'jacket'] },
  { key: 'spineMarginUm', label: 'Safe margin of the spine', for: ['paperback cover', 'case', 'jacket'] },
];

/** Figures that are numbers of pages. */
export const PAGE_FIGURES = [
  { key: 'spineTextFromPages', label: 'Pages from which the spine has text', min: 0, max: 20_000 },
  { key: 'pageMultiple', label: 'Pages are bound in multiples of', min: 1, max: 64 },
] as const;

export type LengthKey = Exclude<keyof GivenFigures, (typeof PAGE_FIGURES)[number]['key']>;
