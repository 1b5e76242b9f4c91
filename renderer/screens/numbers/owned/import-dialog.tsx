import { useState } from 'react';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useCommand } from '../../../api.ts';
import { Button, Dialog, Notice } from '../../../ui/index.ts';
import { FormDialog } from '../../work/parts/form-dialog.tsx';
import { doneInWords } from './list.ts';
import { ListPreview } from './list-preview.tsx';
import { ListSource } from './list-source.tsx';
import './owned.css';
import { type ReadList, useList } from './use-list.ts';

/** Why a list cannot be recorded as it stands. */
function blockedBy(list: ReadList | undefined, pasted: string, goodOnly: boolean): string | undefined {
  if (!list) return pasted.trim() === '' ? 'Choose a file or paste the list first.' : 'Read the list first.';
  if (list.found.blocks.length === 0) return 'The list holds no number that is understood.';
  if (list.found.problems.length > 0 && !goodOnly)
    return 'Mend what needs a look, or choose to record the good lines only.';
  return undefined;
}

type Done = OutputOf<'blocks.importList'>;

function ImportForm({ onClose, onDone }: { onClose: () => void; onDone: (done: Done) => void }) {
  const { list, refusal, pending, read, forget } = useList();
  const [pasted, setPasted] = useState('');
  const [goodOnly, setGoodOnly] = useState(false);
  const record = useCommand('blocks.importList');
  const send = async () => {
    if (!list) return;
    const answer = await record.run({ text: list.text, goodLinesOnly: goodOnly });
    if (answer.ok) onDone(answer.value);
  };
  return (
    <FormDialog
      title="Import the agency’s list"
      submit="Record the list"
      blocked={blockedBy(list, pasted, goodOnly)}
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={record.pending}
      refusal={record.refusal ?? refusal}
      dirty={pasted !== '' || list !== undefined}
    >
      <ListSource
        pasted={pasted}
        onPaste={(text) => {
          setPasted(text);
          forget();
        }}
        onRead={(text, fileName) => {
          setGoodOnly(false);
          record.clear();
          if (fileName !== undefined) setPasted('');
          void read(text, fileName);
        }}
        pending={pending}
      />
      {list ? (
        <ListPreview
          list={list}
          goodOnly={goodOnly}
          onGoodOnly={setGoodOnly}
          onMend={(text) => {
            if (list.fileName === undefined) setPasted(text);
            void read(text, list.fileName);
          }}
        />
      ) : null}
    </FormDialog>
  );
}

/** Records the blocks and numbers of the list that an agency gives out, once it was read and looked at. */
export function ImportDialog({ onClose }: { onClose: () => void }) {
  const [done, setDone] = useState<Done>();
  if (!done) return <ImportForm onClose={onClose} onDone={setDone} />;
  return (
    <Dialog
      open
      onClose={onClose}
      title="The list is recorded"
      width="narrow"
      footer={
        <Button kind="primary" onClick={onClose}>
          Done
        </Button>
      }
    >
      <Notice tone="done" live>
        {doneInWords(done).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Notice>
    </Dialog>
  );
}
