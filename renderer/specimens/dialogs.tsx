import { useState } from 'react';
import { announce } from '../status.ts';
import { Button, ConfirmDialog, Dialog, TextInput } from '../ui/index.ts';

/** A form in a dialog, and a step that asks for a reason. */
export function DialogSpecimens() {
  const [open, setOpen] = useState<'form' | 'confirm'>();
  const [title, setTitle] = useState('');
  const close = () => setOpen(undefined);
  return (
    <div className="row">
      <Button onClick={() => setOpen('form')}>Add a work</Button>
      <Button kind="danger" onClick={() => setOpen('confirm')}>
        Cancel the format
      </Button>
      <Dialog
        open={open === 'form'}
        onClose={close}
        title="Add a work"
        footer={
          <>
            <Button kind="primary" onClick={close}>
              Add the work
            </Button>
            <Button onClick={close}>Keep as it is</Button>
          </>
        }
      >
        <TextInput label="Title" required value={title} onChange={setTitle} />
      </Dialog>
      <ConfirmDialog
        open={open === 'confirm'}
        onClose={close}
        title="Cancel the hardcover?"
        confirm="Cancel the format"
        danger
        reason="required"
        onConfirm={(reason) => {
          announce(`Cancelled: ${reason}`);
          close();
        }}
      >
        Its number 979-8-969999-05-3 is then spent and can never be used again.
      </ConfirmDialog>
    </div>
  );
}
