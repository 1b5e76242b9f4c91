import { useEffect, useRef, useState } from 'react';
import type { Format } from '../../../../src/contract/formats.ts';
import { type CallRefused, useQueryOf } from '../../../api.ts';
import { Dialog, Notice, Refused } from '../../../ui/index.ts';
import { useGuardedClose } from '../../../ui/use-guarded-close.tsx';
import './barcode.css';
import { BarcodeFields } from './barcode-fields.tsx';
import { BarcodePicture } from './barcode-picture.tsx';
import { type BarcodeDraft, drawInput, FIRST_DRAFT } from './draft.ts';
import { SaveButtons } from './save-buttons.tsx';

/** Fields of the dialog, by the first part of a refusal's path. */
const FIELDS = ['magnification', 'barWidthReductionUm', 'addOn', 'dpi'];

const rootOf = (refusal: CallRefused | undefined) => refusal?.field?.split('.')[0];

/** What is chosen, and the picture of it; while a field is half typed the last sound picture stays. */
function useDrawing(formatId: number) {
  const [draft, setDraft] = useState<BarcodeDraft>(FIRST_DRAFT);
  const [sound, setSound] = useState(() => drawInput(formatId, FIRST_DRAFT, 'svg'));
  const drawn = useQueryOf('barcodes.draw', sound ?? { formatId, as: 'svg' }, { keep: true });
  const set = (part: Partial<BarcodeDraft>) => {
    const next = { ...draft, ...part };
    setDraft(next);
    setSound((now) => drawInput(formatId, next, 'svg') ?? now);
  };
  return { draft, set, drawn };
}

export interface BarcodeDialogProps {
  format: Pick<Format, 'id' | 'name' | 'hyphenated' | 'prices'>;
  onClose: () => void;
}

/** Draws the bar code of a format as it is chosen, and saves it as a file for the cover. */
export function BarcodeDialog({ format, onClose }: BarcodeDialogProps) {
  const { draft, set, drawn } = useDrawing(format.id);
  const [notSaved, setNotSaved] = useState<CallRefused>();
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (notSaved) box.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [notSaved]);
  const refusal = notSaved ?? drawn.error ?? undefined;
  const root = rootOf(refusal);
  // As it was at first, or as it was last saved as a file: nothing is lost with it.
  const [safe, setSafe] = useState<BarcodeDraft>(FIRST_DRAFT);
  const guard = useGuardedClose(draft !== safe, onClose);
  const shownAtField = root !== undefined && FIELDS.includes(root);
  return (
    <>
      <Dialog
        open
        onClose={guard.close}
        title={`Bar code of ${format.name}`}
        footer={
          <SaveButtons
            formatId={format.id}
            draft={draft}
            refusal={drawn.error}
            onRefused={setNotSaved}
            onSaved={() => setSafe(draft)}
          />
        }
      >
        <div className="stack" ref={box}>
          <BarcodePicture drawn={drawn.data} hyphenated={format.hyphenated ?? ''} />
          <Refused refusal={shownAtField ? undefined : refusal} />
          <BarcodeFields
            draft={draft}
            set={(part) => {
              setNotSaved(undefined);
              set(part);
            }}
            prices={format.prices}
            errorOf={(field) => (root === field ? refusal?.message : undefined)}
          />
          <Notice title="Your printer’s own requirements prevail.">
            Ask for the size, the place on the cover and the bar width reduction before you send the file, and
            have a printed copy scanned.
          </Notice>
        </div>
      </Dialog>
      {guard.question}
    </>
  );
}
