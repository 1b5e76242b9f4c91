import { type ReactNode, useRef, useState } from 'react';
import type { CallRefused } from '../transport.ts';
import { Button } from './button.tsx';
import { Dialog } from './dialog.tsx';
import { Refused } from './notice.tsx';
import { TextArea } from './text-area.tsx';

export interface ConfirmDialogProps {
  open: boolean;
  onClose: () => void;
  title: string;
  /** What will happen, and what cannot be taken back. */
  children: ReactNode;
  /** The verb of the confirming button, such as `Cancel the format`. */
  confirm: string;
  danger?: boolean | undefined;
  /** Asks for a reason; `required` keeps the button waiting for one. */
  reason?: 'optional' | 'required' | undefined;
  reasonLabel?: string | undefined;
  reasonHelp?: ReactNode;
  pending?: boolean | undefined;
  refusal?: CallRefused | undefined;
  /** The trimmed reason, empty where none is asked or given. */
  onConfirm: (reason: string) => void;
}

/** Asks before a step; with a reason field where the step must say why. */
export function ConfirmDialog(props: ConfirmDialogProps) {
  return props.open ? <OpenConfirm {...props} /> : null;
}

function OpenConfirm(props: ConfirmDialogProps) {
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const [leaving, setLeaving] = useState(false);
  const text = useRef<HTMLDivElement>(null);
  const missing = props.reason === 'required' && reason.trim() === '';
  const leave = () => (reason.trim() === '' ? props.onClose() : setLeaving(true));
  return (
    <>
      <Dialog
        open
        onClose={leave}
        title={props.title}
        width="narrow"
        footer={
          <>
            <Button
              kind={props.danger ? 'danger' : 'primary'}
              pending={props.pending}
              onClick={() => {
                setAsked(true);
                if (missing) text.current?.querySelector('textarea')?.focus();
                else props.onConfirm(reason.trim());
              }}
            >
              {props.confirm}
            </Button>
            <Button onClick={leave}>Keep as it is</Button>
          </>
        }
      >
        <div className="stack" ref={text}>
          <div>{props.children}</div>
          {props.reason ? (
            <TextArea
              label={props.reasonLabel ?? 'Reason'}
              help={props.reasonHelp ?? 'Kept in the journal.'}
              required={props.reason === 'required'}
              error={asked && missing ? 'Say why in a few words.' : undefined}
              value={reason}
              onChange={setReason}
              rows={3}
            />
          ) : null}
          <Refused refusal={props.refusal} />
        </div>
      </Dialog>
      <ConfirmDialog
        open={leaving}
        onClose={() => setLeaving(false)}
        title="Close without saving?"
        confirm="Close without saving"
        danger
        onConfirm={props.onClose}
      >
        What you typed here is then lost.
      </ConfirmDialog>
    </>
  );
}
