import type { OutputOf } from '../../../../src/contract/index.ts';
import type { LengthUnit } from '../../../lib/length.ts';
import { LengthInput, NumberInput, Select, TextInput } from '../../../ui/index.ts';
import { type CoverDraft, FIGURES, OTHER_PAPER, PAGE_FIGURES, type Paper, type SheetKind } from './draft.ts';
import { KeepFigures, KeepPaper, UsualFigures } from './keep.tsx';

interface CoverFieldsProps {
  draft: CoverDraft;
  set: (part: Partial<CoverDraft>) => void;
  papers: readonly Paper[];
  /** The form allows a case or a jacket. */
  hardback: boolean;
  /** What was chosen or is usual; not known before the first picture. */
  sheet: SheetKind | undefined;
  figures: OutputOf<'covers.draw'>['figures'] | undefined;
  unit: LengthUnit;
  errorOf: (field: string) => string | undefined;
}

/** 'Cream, print on demand: 400 pages to the inch' */
function paperLabel({ name, bulk }: Paper): string {
  const thickness =
    'pagesPerInch' in bulk
      ? `${bulk.pagesPerInch} pages to the inch`
      : `a leaf of ${(bulk.leafUm / 1_000).toLocaleString()} mm`;
  return `${name}: ${thickness}`;
}

/** The paper and the pages, from which the spine follows. */
export function CoverFields(props: CoverFieldsProps) {
  const { draft, set, papers, hardback, sheet, unit, errorOf } = props;
  return (
    <div className="columns">
      <Select
        label="Paper"
        value={draft.paper}
        onChange={(paper) => set({ paper })}
        choices={[
          ...papers.map((paper, at) => ({ value: String(at), label: paperLabel(paper) })),
          { value: OTHER_PAPER, label: 'Another paper' },
        ]}
        help="Ask your printer how thick the paper is; the spine follows from it."
      />
      {draft.paper === OTHER_PAPER ? <OtherPaper {...props} /> : null}
      <NumberInput
        label="Pages"
        min={1}
        max={20_000}
        value={draft.pages}
        onChange={(pages) => set({ pages })}
        error={errorOf('pages')}
        help="As printed; what is added to bind it follows. The record is not changed."
      />
      <LengthInput
        label="Trim width"
        unit={unit}
        value={draft.trimWidthUm}
        onChange={(trimWidthUm) => set({ trimWidthUm })}
        error={errorOf('trim')}
      />
      <LengthInput
        label="Trim height"
        unit={unit}
        value={draft.trimHeightUm}
        onChange={(trimHeightUm) => set({ trimHeightUm })}
        help="Another trim may be tried; the record is not changed."
      />
      {hardback && sheet ? (
        <Select<SheetKind>
          label="Sheet"
          value={sheet}
          onChange={(kind) => set({ sheet: kind })}
          choices={[
            { value: 'case', label: 'The case' },
            { value: 'jacket', label: 'The jacket' },
          ]}
        />
      ) : null}
    </div>
  );
}

/** A paper that the list does not have yet. */
function OtherPaper({ draft, set, unit, errorOf }: CoverFieldsProps) {
  return (
    <>
      <NumberInput
        label="Pages to the inch"
        min={50}
        max={3_000}
        value={draft.pagesPerInch}
        onChange={(pagesPerInch) => set({ pagesPerInch })}
        error={errorOf('bulk')}
      />
      <LengthInput
        label="Or: thickness of a leaf"
        unit={unit}
        value={draft.leafUm}
        onChange={(leafUm) => set({ leafUm })}
        help="Taken where no pages to the inch are given."
      />
      <TextInput
        label="Name of the paper"
        value={draft.paperName}
        onChange={(paperName) => set({ paperName })}
        help="Needed only to keep it for other books."
      />
      <KeepPaper draft={draft} />
    </>
  );
}

/** Every figure of the printer that matters to this sheet. */
export function FigureFields({ draft, set, sheet, figures, unit }: CoverFieldsProps) {
  if (!figures || !sheet) return null;
  return (
    <details>
      <summary>Your printer’s figures</summary>
      <div className="columns">
        {FIGURES.filter((figure) => figure.for.includes(sheet)).map(({ key, label }) => (
          <LengthInput
            key={key}
            label={label}
            unit={unit}
            value={draft.figures[key] ?? figures[key]}
            onChange={(um) => set({ figures: { ...draft.figures, [key]: um } })}
          />
        ))}
        {PAGE_FIGURES.map(({ key, label, min, max }) => (
          <NumberInput
            key={key}
            label={label}
            min={min}
            max={max}
            value={draft.figures[key] ?? figures[key]}
            onChange={(count) => set({ figures: { ...draft.figures, [key]: count } })}
          />
        ))}
      </div>
      <KeepFigures figures={draft.figures} />
      <UsualFigures onDone={() => set({ figures: {} })} />
    </details>
  );
}
