import { Link } from 'wouter';
import { useAsOf } from '../../../location.ts';
import { useReadOnly } from '../../../read-only.ts';
import { Button, Field, Notice, PageHeader, Refused, Section } from '../../../ui/index.ts';
import { JobProgress } from '../../../ui/job-progress.tsx';
import './onix.css';
import { PreviewList } from './preview-list.tsx';
import { useOnixMessage } from './use-onix-message.ts';
import { countsInWords, headline, takenInWords } from './words.ts';

function ChooseMessage({ disabled, onFile }: { disabled: boolean; onFile: (file: File) => void }) {
  return (
    <Field label="ONIX message" help="An XML file of ONIX 3.1, 3.0 or 2.1, in either set of names.">
      {(ids) => (
        <input
          {...ids}
          className="input"
          type="file"
          accept=".xml,.onix,.onx,application/xml,text/xml"
          disabled={disabled}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file) onFile(file);
            event.target.value = '';
          }}
        />
      )}
    </Field>
  );
}

/** Takes an ONIX message over: a look at every product first, then all of the chosen ones or none. */
export function OnixPage() {
  const message = useOnixMessage();
  const readOnly = useReadOnly();
  const { asOf } = useAsOf();
  const { preview, taken, job } = message;
  const closed = readOnly !== undefined || asOf !== undefined;
  const busy = job.running;
  return (
    <>
      <PageHeader
        title="ONIX in"
        crumbs={[{ label: 'Catalogue', to: '/catalogue' }, { label: 'ONIX in' }]}
        lede="Take over product records that another system wrote. Nothing is changed before you have seen every product."
      />
      {closed ? (
        <Notice tone="care">{readOnly ?? 'A past day is read only; choose today first.'}</Notice>
      ) : null}
      <Section title="The file">
        <div className="stack exchange-form">
          <ChooseMessage disabled={closed || busy} onFile={(file) => void message.choose(file)} />
          <JobProgress job={job} what="Reading" />
          <Refused refusal={message.refusal} />
          {message.told ? (
            <Notice tone="done" title={`${message.name} is taken over.`} live>
              <p>{takenInWords(message.told)}</p>
              <p>
                What is on sale already has no channel here yet: list it on its channels, with the days it was
                sent and sold. <Link href="/catalogue">To the catalogue</Link>
              </p>
            </Notice>
          ) : null}
        </div>
      </Section>
      {preview ? (
        <Section
          title="What is in it"
          actions={
            <Button
              kind="primary"
              disabled={closed || busy || taken.size === 0}
              onClick={() => void message.carryOut()}
            >
              Take {taken.size.toLocaleString()} over
            </Button>
          }
        >
          <p>
            {headline(preview)} {countsInWords(preview)}.
          </p>
          <p>
            Works and editions are proposed from what the products say of each other, else from title and
            first contributor. Look through them: the first product of an edition speaks for it.
          </p>
          <PreviewList
            preview={preview}
            taken={taken}
            disabled={closed || busy}
            onTake={message.take}
            onPlace={(row, place) => void message.place(row, place)}
          />
        </Section>
      ) : null}
    </>
  );
}
