import type { Backup } from '../../../../src/contract/backups.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { Notice, Refused } from '../../../ui/index.ts';
import { sentenceOf } from '../../journal/sentences.ts';
import { FormDialog } from '../../work/parts/form-dialog.tsx';
import { lossInWords, momentOf } from './words.ts';

type Preview = OutputOf<'backups.preview'>;

const COUNTED = [
  { key: 'works', label: 'Works' },
  { key: 'formats', label: 'Formats' },
  { key: 'numbers', label: 'Numbers in use' },
] as const;

/** How much the catalogue holds now and would hold then. */
function Counts({ preview }: { preview: Preview }) {
  return (
    <table className="counts">
      <caption className="visually-hidden">What the catalogue holds</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Now</th>
          <th scope="col">In the backup</th>
        </tr>
      </thead>
      <tbody>
        {COUNTED.map(({ key, label }) => (
          <tr key={key}>
            <th scope="row">{label}</th>
            <td>{preview.now[key].toLocaleString()}</td>
            <td>{preview.restored[key].toLocaleString()}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The changes that would be lost, newest first; a long list names its newest. */
function Lost({ preview }: { preview: Preview }) {
  const { lost, lostTotal } = preview;
  if (lost.length === 0) return null;
  return (
    <details>
      <summary>Read what would be lost</summary>
      <ul className="lost">
        {lost.map((change, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the list is never reordered, and two changes can be alike.
          <li key={place}>
            <span className="soft">{momentOf(change.at)}</span> {sentenceOf(change.operation)}
          </li>
        ))}
      </ul>
      {lostTotal > lost.length ? (
        <p className="soft">and {(lostTotal - lost.length).toLocaleString()} older ones</p>
      ) : null}
    </details>
  );
}

function PreviewText({ preview }: { preview: Preview }) {
  const harmless = preview.sameStory && preview.lostTotal === 0;
  return (
    <>
      <Notice tone={harmless ? 'note' : 'care'}>{lossInWords(preview)}</Notice>
      <Lost preview={preview} />
      <Counts preview={preview} />
      <p>
        <strong>The catalogue as it stands is backed up first</strong>, so you can come back to it by
        restoring that backup.
      </p>
    </>
  );
}

/** Shows what restoring a backup would change, and restores it. */
export function RestoreDialog({ backup, onClose }: { backup: Backup; onClose: () => void }) {
  const { name } = backup;
  const preview = useQueryOf('backups.preview', { name });
  const restore = useCommand('backups.restore');
  const moment = momentOf(backup.at);
  const send = async () => {
    const answer = await restore.run(
      { name },
      `The catalogue is as it was on ${moment}. What stood here before is kept among the backups.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Restore the backup of ${moment}?`}
      submit="Restore this backup"
      blocked={preview.data ? undefined : (preview.error?.message ?? 'The backup is still being read.')}
      danger
      onClose={onClose}
      onSubmit={() => void send()}
      pending={restore.pending}
      refusal={restore.refusal}
    >
      <Refused refusal={preview.error} />
      {preview.isPending ? <p className="soft">Reading the backup…</p> : null}
      {preview.data ? <PreviewText preview={preview.data} /> : null}
    </FormDialog>
  );
}
