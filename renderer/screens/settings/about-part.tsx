import { useState } from 'react';
import { Link } from 'wouter';
import type { OutputOf } from '../../../src/contract/index.ts';
import { CallRefused, call } from '../../api.ts';
import { Button, KeyValue, Notice, Refused, Section } from '../../ui/index.ts';

type Info = OutputOf<'catalogue.info'>;
type Found = OutputOf<'catalogue.check'>;

/** What the check found, sentence by sentence. */
function Findings({ found }: { found: Found }) {
  return (
    <Notice
      live
      tone={found.ok ? 'done' : 'stop'}
      title={found.ok ? 'The catalogue file is sound.' : 'The catalogue file is not sound.'}
    >
      <ul className="findings">
        {found.sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {found.ok ? null : <p>Keep a copy of the file as it is before you do anything else.</p>}
    </Notice>
  );
}

/** The button that has the host read the whole file, and its answer. */
function FileCheck() {
  const [pending, setPending] = useState(false);
  const [found, setFound] = useState<Found>();
  const [refusal, setRefusal] = useState<CallRefused>();
  const run = async () => {
    setPending(true);
    setFound(undefined);
    setRefusal(undefined);
    try {
      setFound(await call('catalogue.check', {}));
    } catch (thrown) {
      setRefusal(
        thrown instanceof CallRefused
          ? thrown
          : new CallRefused({ code: 'INTERNAL', message: thrown instanceof Error ? thrown.message : '' }),
      );
    }
    setPending(false);
  };
  return (
    <div className="stack">
      <div>
        <Button pending={pending} onClick={() => void run()}>
          Check the file
        </Button>
      </div>
      {found ? <Findings found={found} /> : null}
      <Refused refusal={refusal} />
    </div>
  );
}

/** What is open and in which version. */
export function AboutPart({ info }: { info: Info }) {
  return (
    <Section title="About this catalogue">
      <div className="stack">
        <KeyValue
          items={[
            { label: 'File', value: <span className="path">{info.file}</span> },
            { label: 'Form of the file', value: `version ${info.schemaVersion}` },
            { label: 'Edition Ledger', value: `version ${info.appVersion}` },
            {
              label: 'Journal',
              value: (
                <>
                  {info.journalEntries.toLocaleString()} entries, <Link href="/journal">read them</Link>
                </>
              ),
            },
          ]}
        />
        <FileCheck />
      </div>
    </Section>
  );
}
