import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { useQueryOf } from '../../api.ts';
import { saveFile } from '../../lib/save-file.ts';
import { Button, CopyButton, Refused, Section } from '../../ui/index.ts';

const licences = z.array(
  z.object({ name: z.string(), version: z.string(), licence: z.string(), text: z.string() }),
);

async function readLicences() {
  return licences.parse(await (await fetch('./licences.json')).json());
}

/** The licences of everything that the program carries, each with its own words. */
function Licences() {
  const [open, setOpen] = useState(false);
  const found = useQuery({
    queryKey: ['licences'],
    queryFn: readLicences,
    enabled: open,
    staleTime: Infinity,
  });
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Licences of what is inside</summary>
      <p>
        Edition Ledger is free under the MIT licence. It carries these works of others; the packaged desktop
        program also brings Electron and Chromium, whose licences lie beside it.
      </p>
      {found.isError ? <p>The list cannot be read; start Edition Ledger again.</p> : null}
      <ul className="licences">
        {found.data?.map(({ name, version, licence, text }) => (
          <li key={`${name} ${version}`}>
            <details>
              <summary>
                {name} {version}, {licence}
              </summary>
              {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a keyboard must be able to scroll the words. */}
              <pre className="licence-text" tabIndex={0}>
                {text}
              </pre>
            </details>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The errors noted on this computer, to be read, copied or saved; the program sends them nowhere. */
function Errors() {
  const log = useQueryOf('program.log', {});
  const { file, text } = log.data ?? { file: null, text: '' };
  const save = () =>
    saveFile('edition-ledger-errors.txt', new Blob([text], { type: 'text/plain;charset=utf-8' }));
  return (
    <div className="stack">
      <h3>Errors</h3>
      <Refused refusal={log.error} />
      {file === null ? null : (
        <p className="soft">
          Noted in <span className="path">{file}</span> and sent nowhere. Read it before you send it to
          somebody: it may name files and titles.
        </p>
      )}
      {text === '' ? (
        <p>No error was noted.</p>
      ) : (
        <>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a keyboard must be able to scroll the words. */}
          <pre className="licence-text" tabIndex={0}>
            {text}
          </pre>
          <div className="row">
            <CopyButton text={text} what="The list of errors" />
            <Button onClick={save}>Save as a file</Button>
          </div>
        </>
      )}
    </div>
  );
}

/** What the program carries and what went wrong in it. */
export function ProgramPart() {
  return (
    <Section title="About the program">
      <div className="stack">
        <Errors />
        <Licences />
      </div>
    </Section>
  );
}
