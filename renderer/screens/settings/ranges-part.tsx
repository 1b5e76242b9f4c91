import { useState } from 'react';
import { loadRanges } from '../../../src/contract/ranges.ts';
import { useCommand, useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { Button, FileInput, KeyValue, Refused, Section } from '../../ui/index.ts';
import { FormDialog } from '../work/parts/form-dialog.tsx';
import { checkInput } from './parts/input-check.ts';

/** A range message is far smaller; the contract takes no more. */
const MAX_BYTES = 4_000_000;

/** Takes a newer range message from a file; what is wrong with it is told and nothing is changed then. */
function LoadDialog({ onClose }: { onClose: () => void }) {
  const [xml, setXml] = useState<string>();
  const load = useCommand('ranges.load');
  const wrong = xml === undefined ? undefined : checkInput(loadRanges.input, { xml }).xml;
  const send = async () => {
    if (xml === undefined) return;
    const answer = await load.run(
      { xml },
      (facts) => `Numbers are now judged by the ranges of ${facts.date}.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title="Load a newer range message"
      submit="Load this message"
      blocked={xml === undefined ? 'Choose the file first.' : wrong}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={load.pending}
      refusal={load.refusal}
      fields={['xml']}
      dirty={xml !== undefined}
      width="narrow"
    >
      <p>
        The International ISBN Agency publishes the table of ranges as an XML file, several times a year. Save
        it from their site and choose it here. You need it only where a newly given prefix is not known yet.
      </p>
      <FileInput
        label="Range message"
        accept=".xml,application/xml,text/xml"
        maxBytes={MAX_BYTES}
        onText={(text) => {
          load.clear();
          setXml(text);
        }}
        error={wrong ?? load.errorOf('xml')}
        help="A table that is older than the one in use, or not well formed, is refused."
      />
    </FormDialog>
  );
}

/** By which table of ISBN ranges numbers are judged, and how a newer one is loaded. */
export function RangesPart({ readOnly }: { readOnly: string | undefined }) {
  const ranges = useQueryOf('ranges.get', {});
  const [loading, setLoading] = useState(false);
  const facts = ranges.data;
  return (
    <Section title="Ranges of ISBNs">
      <div className="stack">
        <p>They say where the hyphens of a number stand and how large a block is.</p>
        <Refused refusal={ranges.error} />
        {facts ? (
          <KeyValue
            items={[
              { label: 'Issued by', value: facts.source },
              { label: 'Issued', value: facts.issued },
              { label: 'Serial', value: facts.serial ?? 'none' },
              { label: 'Registration groups', value: facts.groups.toLocaleString() },
              {
                label: 'How it came here',
                value:
                  facts.loadedOn === null ? 'with Edition Ledger' : `loaded on ${formatDay(facts.loadedOn)}`,
              },
            ]}
          />
        ) : null}
        <div>
          <Button disabled={readOnly !== undefined} reason={readOnly} onClick={() => setLoading(true)}>
            Load a newer range message…
          </Button>
        </div>
      </div>
      {loading ? <LoadDialog onClose={() => setLoading(false)} /> : null}
    </Section>
  );
}
