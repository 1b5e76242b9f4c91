import { useState } from 'react';
import { Link } from 'wouter';
import type { Format } from '../../../../src/contract/formats.ts';
import { fileKindName } from '../../../../src/contract/terms.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, ConfirmDialog } from '../../../ui/index.ts';
import { closeAt } from '../parts/go-to.ts';
import { counted } from '../parts/names.ts';
import { useWork } from '../parts/work-context.tsx';
import { RecordFileDialog } from './record-file-dialog.tsx';
import './ready.css';

type FormatFile = Format['files'][number];

function FileLine({ file, onWithdraw }: { file: FormatFile; onWithdraw: (() => void) | undefined }) {
  const { ended } = file;
  return (
    <li>
      <span className="file-kind">{fileKindName(file.kind)}</span>
      <span className="file-name">
        <span className="file-name-text">{file.fileName}</span>{' '}
        <span className="soft">
          {ended === null ? `final on ${formatDay(file.finalOn)}` : `${ended.how} on ${formatDay(ended.on)}`}
          {ended?.reason ? `: ${ended.reason}` : ''}
          {file.note === '' ? '' : ` · ${file.note}`}
        </span>
      </span>
      {onWithdraw ? (
        <Button kind="quiet" label={`Withdraw ${file.fileName}`} onClick={onWithdraw}>
          Withdraw
        </Button>
      ) : null}
    </li>
  );
}

function WithdrawDialog({
  format,
  file,
  onClose,
}: {
  format: Format;
  file: FormatFile;
  onClose: () => void;
}) {
  const withdraw = useCommand('formats.withdrawFile');
  const send = async (reason: string) => {
    const answer = await withdraw.run({ id: file.id, reason }, `${file.fileName} is withdrawn.`);
    if (answer.ok) closeAt(onClose, 'format', format.id);
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Withdraw ${file.fileName}?`}
      confirm="Withdraw the file"
      reason="required"
      pending={withdraw.pending}
      refusal={withdraw.refusal}
      onConfirm={(reason) => void send(reason)}
    >
      It stays on record as withdrawn; {format.name} has no final {fileKindName(file.kind)} until another is
      recorded.
    </ConfirmDialog>
  );
}

/** The final files of a format: those in force, and behind a line those that were replaced or withdrawn. */
export function FileList({ format }: { format: Format }) {
  const { work, editable } = useWork();
  const [doing, setDoing] = useState<'record' | FormatFile>();
  const running = editable && format.standing !== 'retired' && format.standing !== 'cancelled';
  const inForce = format.files.filter((file) => file.ended === null);
  const ended = format.files.filter((file) => file.ended !== null);
  if (format.files.length === 0 && !running) return null;
  const close = () => setDoing(undefined);
  return (
    <div className="files">
      <div className="listings-head">
        <h4>Final files</h4>
        <span className="row">
          <Link href={`/work/${work.id}/check/${format.id}`} aria-label={`Proof check: ${format.name}`}>
            Proof check
          </Link>
          {running ? (
            <Button kind="quiet" label={`Record a file: ${format.name}`} onClick={() => setDoing('record')}>
              Record a file
            </Button>
          ) : null}
        </span>
      </div>
      {inForce.length === 0 ? <p className="soft unlisted">None is recorded.</p> : null}
      <ul className="file-list">
        {inForce.map((file) => (
          <FileLine key={file.id} file={file} onWithdraw={running ? () => setDoing(file) : undefined} />
        ))}
      </ul>
      {ended.length === 0 ? null : (
        <details className="compare">
          <summary>{counted(ended.length, 'earlier file')}</summary>
          <ul className="file-list">
            {ended.map((file) => (
              <FileLine key={file.id} file={file} onWithdraw={undefined} />
            ))}
          </ul>
        </details>
      )}
      {doing === 'record' ? <RecordFileDialog format={format} onClose={close} /> : null}
      {typeof doing === 'object' ? <WithdrawDialog format={format} file={doing} onClose={close} /> : null}
    </div>
  );
}
