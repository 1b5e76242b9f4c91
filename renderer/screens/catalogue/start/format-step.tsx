import { useState } from 'react';
import type { Work } from '../../../../src/contract/works.ts';
import { Button } from '../../../ui/index.ts';
import { AddFormatDialog } from '../../work/format/format-dialogs.tsx';
import { NumberDialog } from '../../work/format/number-dialog.tsx';
import { useWorkFacts, WorkProvider } from '../../work/parts/work-context.tsx';
import '../../work/forms.css';

interface FormatStepProps {
  work: Work | undefined;
  hasBlock: boolean;
  readOnly: string | undefined;
  /** Called once a dialog has closed. */
  onClosed: () => void;
}

/** The first format of the first work, then its number, by the dialogs of the Work screen. */
export function FormatStep(props: FormatStepProps) {
  return props.work ? (
    <OfWork {...props} work={props.work} />
  ) : (
    <p className="soft">Record the work first.</p>
  );
}

function OfWork({ work, hasBlock, readOnly, onClosed }: FormatStepProps & { work: Work }) {
  const [open, setOpen] = useState(false);
  const { facts } = useWorkFacts(work.id);
  const edition = work.editions[0];
  const format = edition?.formats[0];
  if (!edition || !facts) return null;
  const close = () => {
    setOpen(false);
    onClosed();
  };
  const noBlock = format && !hasBlock ? 'Record a block of numbers first.' : undefined;
  const reason = readOnly ?? noBlock;
  return (
    <WorkProvider facts={facts}>
      {format ? <p>{format.name} is added; it has no number yet.</p> : null}
      <Button kind="primary" onClick={() => setOpen(true)} disabled={reason !== undefined} reason={reason}>
        {format ? 'Take its number…' : 'Add a format…'}
      </Button>
      {open && format ? <NumberDialog format={format} onClose={close} /> : null}
      {open && !format ? <AddFormatDialog edition={edition} onClose={close} /> : null}
    </WorkProvider>
  );
}
