import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { CallRefused } from '../../../api.ts';
import { Button, Dialog, Refused } from '../../../ui/index.ts';

export interface FormDialogProps {
  title: string;
  onClose: () => void;
  /** Sends the form; called by the button and by Enter. */
  onSubmit: () => void;
  /** The verb of the sending button. */
  submit: string;
  /** Why the form cannot be sent as it stands. */
  blocked?: string | undefined;
  danger?: boolean | undefined;
  pending?: boolean | undefined;
  /** Something was typed: leaving asks first. */
  dirty?: boolean | undefined;
  refusal?: CallRefused | undefined;
  /** Fields whose refusals the form shows itself, by the first part of their path. */
  fields?: readonly string[] | undefined;
  width?: 'narrow' | 'medium' | 'wide' | undefined;
  children: ReactNode;
}

/** Where the eye should be after a refusal: the first wrong input, or else the sentence itself. */
function showTrouble(form: HTMLFormElement | null): void {
  const wrong = form?.querySelector<HTMLElement>('[aria-invalid="true"]');
  if (wrong) wrong.focus();
  else form?.querySelector('.notice-stop')?.scrollIntoView({ block: 'nearest' });
}

/** A form in a dialog: Enter sends, Escape leaves, typed work is not lost without a question. */
export function FormDialog(props: FormDialogProps) {
  const { refusal, fields = [], pending, blocked, onClose } = props;
  const form = useRef<HTMLFormElement>(null);
  const [leaving, setLeaving] = useState(false);
  useEffect(() => {
    if (refusal) showTrouble(form.current);
  }, [refusal]);
  const leave = () => (props.dirty ? setLeaving(true) : onClose());
  const root = refusal?.field?.split('.')[0];
  const shown = refusal && root !== undefined && fields.includes(root) ? [refusal.field ?? ''] : [];
  return (
    <>
      <Dialog
        open
        onClose={leave}
        title={props.title}
        width={props.width}
        footer={
          <>
            <Button
              kind={props.danger ? 'danger' : 'primary'}
              pending={pending}
              disabled={blocked !== undefined}
              reason={blocked}
              onClick={() => form.current?.requestSubmit()}
            >
              {props.submit}
            </Button>
            <Button onClick={leave}>Keep as it is</Button>
          </>
        }
      >
        <form
          ref={form}
          className="stack"
          onSubmit={(event) => {
            event.preventDefault();
            if (!pending && blocked === undefined) props.onSubmit();
          }}
        >
          {props.children}
          <Refused refusal={refusal} fields={shown} />
          {/* Enter in a field presses the first sending button of its form. */}
          <button type="submit" hidden tabIndex={-1} />
        </form>
      </Dialog>
      {leaving ? <LeaveDialog onStay={() => setLeaving(false)} onLeave={onClose} /> : null}
    </>
  );
}

function LeaveDialog({ onStay, onLeave }: { onStay: () => void; onLeave: () => void }) {
  return (
    <Dialog
      open
      onClose={onStay}
      title="Leave without saving?"
      width="narrow"
      footer={
        <>
          <Button kind="primary" onClick={onStay}>
            Go on editing
          </Button>
          <Button onClick={onLeave}>Leave without saving</Button>
        </>
      }
    >
      <p>What you typed here is not saved yet.</p>
    </Dialog>
  );
}
