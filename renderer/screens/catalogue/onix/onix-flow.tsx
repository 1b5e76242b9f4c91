import { useEffect, useRef } from 'react';
import { useAsOf } from '../../../location.ts';
import { Button, Notice, Section } from '../../../ui/index.ts';
import { ReadingFile } from '../exchange/reading-file.tsx';
import { ToCatalogue } from '../exchange/to-catalogue.tsx';
import './onix.css';
import { PreviewList } from './preview-list.tsx';
import { useOnixMessage } from './use-onix-message.ts';
import { countsInWords, headline, takenInWords } from './words.ts';

type Message = ReturnType<typeof useOnixMessage>;

/** What came of it. */
function Taken({ told }: { told: NonNullable<Message['told']> }) {
  return (
    <Section title="Recorded">
      <Notice tone="done" title="The message is taken over." live>
        <p>{takenInWords(told)}</p>
        <p>
          What is on sale already has no channel here yet: list it on its channels, with the days it was sent
          and sold.
        </p>
      </Notice>
      <ToCatalogue />
    </Section>
  );
}

/** Takes an ONIX message over: a look at every product first, then all of the chosen ones or none. */
export function OnixFlow({ file }: { file: File }) {
  const message = useOnixMessage(file);
  const { asOf } = useAsOf();
  const { preview, taken, job, sent, refusal, told } = message;
  const heading = useRef<HTMLParagraphElement>(null);
  const shown = preview !== undefined;
  useEffect(() => {
    if (shown) heading.current?.focus();
  }, [shown]);
  const closed = asOf !== undefined;
  return (
    <>
      <ReadingFile
        {...{ file, sent, job, refusal }}
        read={preview !== undefined || told !== undefined}
        then="Working"
      />
      {closed ? <Notice tone="care">A past day is read only; choose today first.</Notice> : null}
      {told ? <Taken told={told} /> : null}
      {preview ? (
        <Section
          title="What is in it"
          actions={
            <Button
              kind="primary"
              disabled={closed || job.running || taken.size === 0}
              onClick={() => void message.carryOut()}
            >
              Take {taken.size.toLocaleString()} over
            </Button>
          }
        >
          <p ref={heading} tabIndex={-1}>
            {headline(preview)} {countsInWords(preview)}.
          </p>
          <p>
            Works and editions are proposed from what the products say of each other, else from title and
            first contributor. Look through them: the first product of an edition speaks for it.
          </p>
          <PreviewList
            preview={preview}
            taken={taken}
            disabled={closed || job.running}
            onTake={message.take}
            onPlace={(row, place) => void message.place(row, place)}
          />
        </Section>
      ) : null}
    </>
  );
}
