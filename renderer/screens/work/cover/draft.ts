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
  paperName: string;
  pages: number | undefined;
  sheet: SheetKind | undefined;
  figures: GivenFigures;
}

/** The paper the format names, where the list has it; otherwise the first. */
export function firstDraft(papers: readonly Paper[], named: string, pages: number | null): CoverDraft {
  const at = papers.findIndex((paper) => paper.name.toLowerCase() === named.trim().toLowerCase());
  return {
    paper: String(Math.max(at, 0)),
    pagesPerInch: undefined,
    paperName: '',
    pages: pages ?? undefined,
    sheet: undefined,
    figures: {},
  };
}

/** What to ask the host for, or undefined while something it needs is missing. */
export function drawInput(
  formatId: number,
  draft: CoverDraft,
  papers: readonly Paper[],
  as: 'svg' | 'pdf',
): InputOf<'covers.draw'> | undefined {
  const { pagesPerInch, pages, sheet, figures } = draft;
  const other = pagesPerInch === undefined ? undefined : { pagesPerInch };
  const bulk = draft.paper === OTHER_PAPER ? other : papers[Number(draft.paper)]?.bulk;
  if (!bulk || pages === undefined) return undefined;
  return { formatId, as, bulk, pages, figures, ...(sheet ? { sheet } : {}) };
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
  { key: 'spineMarginUm', label: 'Safe margin of the spine', for: ['paperback cover', 'case', 'jacket'] },
];

export type LengthKey = Exclude<keyof GivenFigures, 'spineTextFromPages' | 'boardWiderUm'>;
