import { useState } from 'react';
import type { Format } from '../../../../src/contract/formats.ts';
import { CallRefused, call, useQueryOf } from '../../../api.ts';
import { saveMade } from '../../../lib/save-file.ts';
import { announce } from '../../../status.ts';
import { Button, Dialog, Notice, Refused } from '../../../ui/index.ts';
import { useGuardedClose } from '../../../ui/use-guarded-close.tsx';
import { useWork } from '../parts/work-context.tsx';
import './cover.css';
import { CoverFields, FigureFields } from './cover-fields.tsx';
import { CoverPicture } from './cover-picture.tsx';
import { type CoverDraft, drawInput, firstDraft, type Paper } from './draft.ts';

interface CoverDialogProps {
  format: Format;
  onClose: () => void;
}

/** Works out spine and cover of a format and saves the template for its designer. */
export function CoverDialog({ format, onClose }: CoverDialogProps) {
  const { data } = useQueryOf('covers.papers', {});
  return data ? <OpenDialog format={format} papers={data.papers} onClose={onClose} /> : null;
}

function OpenDialog({ format, papers, onClose }: CoverDialogProps & { papers: readonly Paper[] }) {
  const { settings } = useWork();
  const [draft, setDraft] = useState<CoverDraft>(() => firstDraft(papers, format));
  // As it was at first, or as it was last saved as a file: nothing is lost with it.
  const [safe, setSafe] = useState(draft);
  const [sound, setSound] = useState(() => drawInput(format.id, draft, papers, 'svg'));
  const [notSaved, setNotSaved] = useState<CallRefused>();
  const drawn = useQueryOf(
    'covers.draw',
    sound ?? { formatId: format.id, as: 'svg', bulk: { pagesPerInch: 400 } },
    { keep: true, enabled: sound !== undefined },
  );
  const set = (part: Partial<CoverDraft>) => {
    const next = { ...draft, ...part };
    setDraft(next);
    setNotSaved(undefined);
    setSound((now) => drawInput(format.id, next, papers, 'svg') ?? now);
  };
  const guard = useGuardedClose(draft !== safe, onClose);
  const refusal = notSaved ?? drawn.error ?? undefined;
  const unit = settings.lengthUnit;
  const fields = {
    draft,
    set,
    papers,
    hardback: format.form === 'BB',
    sheet: draft.sheet ?? drawn.data?.sheet.kind,
    figures: drawn.data?.figures,
    unit,
    errorOf: (field: string) => (refusal?.field?.split('.')[0] === field ? refusal.message : undefined),
  };
  return (
    <>
      <Dialog
        open
        onClose={guard.close}
        title={`Cover size of ${format.name}`}
        footer={
          <SaveTemplate
            input={(as) => drawInput(format.id, draft, papers, as)}
            unfit={refusal?.message}
            onRefused={setNotSaved}
            onSaved={() => setSafe(draft)}
          />
        }
      >
        <div className="stack">
          <CoverPicture drawn={drawn.error ? undefined : drawn.data} unit={unit} />
          <Refused refusal={refusal} />
          <CoverFields {...fields} />
          <FigureFields {...fields} />
          <Notice title="Your printer’s own template prevails.">
            Papers and machines differ; these figures are a first reckoning. Ask the printer for the thickness
            of the paper and for a template before the cover is finished.
          </Notice>
        </div>
      </Dialog>
      {guard.question}
    </>
  );
}

interface SaveTemplateProps {
  input: (as: 'svg' | 'pdf') => ReturnType<typeof drawInput>;
  /** Why it cannot be drawn as it stands. */
  unfit: string | undefined;
  onRefused: (refusal: CallRefused) => void;
  onSaved: () => void;
}

function SaveTemplate({ input, unfit, onRefused, onSaved }: SaveTemplateProps) {
  const save = async (as: 'svg' | 'pdf') => {
    const asked = input(as);
    if (!asked) return;
    try {
      const file = await call('covers.draw', asked);
      saveMade(file);
      onSaved();
      announce(`${file.fileName} goes to your downloads.`);
    } catch (thrown) {
      if (!(thrown instanceof CallRefused)) throw thrown;
      onRefused(thrown);
    }
  };
  return (['pdf', 'svg'] as const).map((as) => {
    const reason = input(as) ? unfit : 'Choose a paper and give pages and trim first.';
    return (
      <Button
        key={as}
        kind={as === 'pdf' ? 'primary' : 'plain'}
        disabled={reason !== undefined}
        reason={reason}
        onClick={() => void save(as)}
      >
        Save as {as.toUpperCase()}
      </Button>
    );
  });
}
