import { useState } from 'react';
import { CallRefused, call } from '../../../api.ts';
import { saveMade } from '../../../lib/save-file.ts';
import { announce } from '../../../status.ts';
import { Button } from '../../../ui/index.ts';
import { type BarcodeDraft, drawInput } from './draft.ts';

type As = 'svg' | 'pdf' | 'png';

interface SaveButtonsProps {
  formatId: number;
  draft: BarcodeDraft;
  /** Why it cannot be drawn as it stands. */
  refusal: CallRefused | null;
  onRefused: (refusal: CallRefused | undefined) => void;
  onSaved: () => void;
}

/** Draws the bar code in a form and hands it over as a file. */
async function save(formatId: number, draft: BarcodeDraft, as: As): Promise<void> {
  const input = drawInput(formatId, draft, as);
  if (!input) return;
  const file = await call('barcodes.draw', input);
  saveMade(file);
  announce(`${file.fileName} goes to your downloads.`);
}

/** One button for each form of file. */
export function SaveButtons({ formatId, draft, refusal, onRefused, onSaved }: SaveButtonsProps) {
  const [pending, setPending] = useState<As>();
  const start = async (as: As) => {
    setPending(as);
    onRefused(undefined);
    try {
      await save(formatId, draft, as);
      onSaved();
    } catch (thrown) {
      const refused =
        thrown instanceof CallRefused
          ? thrown
          : new CallRefused({ code: 'INTERNAL', message: String(thrown) });
      onRefused(refused);
      announce(`The bar code was not saved. ${refused.message}`, 'refused');
    }
    setPending(undefined);
  };
  return (['svg', 'pdf', 'png'] as const).map((as) => {
    const missing = drawInput(formatId, draft, as) ? undefined : 'Mend the fields first.';
    const reason = missing ?? refusal?.message;
    return (
      <Button
        key={as}
        kind={as === 'svg' ? 'primary' : 'plain'}
        pending={pending === as}
        disabled={reason !== undefined}
        reason={reason}
        onClick={() => void start(as)}
      >
        Save as {as.toUpperCase()}
      </Button>
    );
  });
}
