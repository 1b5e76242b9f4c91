import { useState } from 'react';
import { useReadOnly } from '../../../read-only.ts';
import { EmptyState, FileInput, Notice, PageHeader, Section } from '../../../ui/index.ts';
import { takeDropped } from './dropped-file.ts';
import './exchange.css';
import { FLOWS, flowOf } from './flows.ts';

/** The largest file that can be taken over, in bytes. */
const MAX_BYTES = 1_000_000_000;

function Kinds() {
  return (
    <ul className="exchange-kinds">
      {FLOWS.map(({ name, of }) => (
        <li key={name}>
          <strong>{name}</strong>: {of}
        </li>
      ))}
    </ul>
  );
}

/** What happens to the chosen file, by its kind. */
function Chosen({ file, turn }: { file: File; turn: number }) {
  const flow = flowOf(file);
  if (flow) return <flow.Flow key={turn} file={file} />;
  return (
    <Notice tone="stop" title={`${file.name} is of no kind that can be taken over.`} live>
      Its name would have to end in {FLOWS.flatMap(({ endings }) => endings).join(', ')}.
    </Notice>
  );
}

/** Import: a file of the person's own, looked at first and recorded when it is understood. */
export function ImportPage() {
  const readOnly = useReadOnly();
  const [{ file, turn }, setChosen] = useState(() => ({ file: takeDropped(), turn: 0 }));
  return (
    <>
      <PageHeader
        title="Import"
        crumbs={[{ label: 'Catalogue', to: '/catalogue' }, { label: 'Import' }]}
        lede="Nothing is recorded before you have seen what would come of it."
      />
      {readOnly === undefined ? (
        <>
          <Section title="The file">
            <div className="stack exchange-form">
              <Kinds />
              <FileInput
                label="File"
                accept={FLOWS.flatMap(({ endings }) => endings).join(',')}
                maxBytes={MAX_BYTES}
                onFile={(next) => setChosen(({ turn: before }) => ({ file: next, turn: before + 1 }))}
                help={file ? `Chosen: ${file.name}` : 'It stays as it is; it is only read.'}
              />
            </div>
          </Section>
          {file ? <Chosen file={file} turn={turn} /> : null}
        </>
      ) : (
        <EmptyState title="Nothing can be imported now">{readOnly}</EmptyState>
      )}
    </>
  );
}
