import { useState } from 'react';
import type { Backup } from '../../../../src/contract/backups.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { Button, type Column, Refused, Section, Table } from '../../../ui/index.ts';
import './backups.css';
import { RestoreDialog } from './restore-dialog.tsx';
import { fileSize, KIND_WORDS, momentOf } from './words.ts';

/** The columns; each backup can be restored. */
function columns(readOnly: string | undefined, onRestore: (backup: Backup) => void): Column<Backup>[] {
  return [
    { key: 'at', header: 'Taken', nowrap: true, cell: ({ at }) => <time dateTime={at}>{momentOf(at)}</time> },
    { key: 'kind', header: 'Why', cell: ({ kind }) => KIND_WORDS[kind] },
    { key: 'bytes', header: 'Size', align: 'end', nowrap: true, cell: ({ bytes }) => fileSize(bytes) },
    {
      key: 'restore',
      header: 'Restore',
      headerHidden: true,
      cell: (backup) => (
        <Button
          kind="quiet"
          label={`Restore… backup of ${momentOf(backup.at)}`}
          disabled={readOnly !== undefined}
          reason={readOnly}
          onClick={() => onRestore(backup)}
        >
          Restore…
        </Button>
      ),
    },
  ];
}

/** Takes a backup at once; possible in a catalogue open for reading too. */
function BackUpNow() {
  const make = useCommand('backups.make');
  return (
    <>
      <div>
        <Button
          pending={make.pending}
          onClick={() => void make.run({}, ({ name }) => `The backup is taken: ${name}.`)}
        >
          Back up now
        </Button>
      </div>
      <Refused refusal={make.refusal} />
    </>
  );
}

/** The backups of this catalogue: where they are, which there are, and the way back to one. */
export function BackupsPart({ readOnly }: { readOnly: string | undefined }) {
  const list = useQueryOf('backups.list', {});
  const [chosen, setChosen] = useState<Backup>();
  return (
    <Section title="Backups">
      <div className="stack">
        <p>
          One is taken by itself on each day the catalogue was changed, and before every step that puts much
          at stake. Older daily ones are thinned out in time; those taken by hand stay.
        </p>
        {list.data ? (
          <p>
            They are kept in <span className="path">{list.data.folder}</span>
          </p>
        ) : null}
        <BackUpNow />
        <Refused refusal={list.error} />
        {list.data ? (
          <Table
            caption="Backups, newest first"
            columns={columns(readOnly, setChosen)}
            rows={list.data.backups}
            rowKey={(backup) => backup.name}
            empty={<p className="soft">No backup yet.</p>}
          />
        ) : null}
      </div>
      {chosen ? <RestoreDialog backup={chosen} onClose={() => setChosen(undefined)} /> : null}
    </Section>
  );
}
