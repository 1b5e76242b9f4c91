import { useState } from 'react';
import type { TextVersion } from '../../../../src/contract/templates.ts';
import { TEXTS } from '../../../../src/contract/text-kinds.ts';
import { useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, type Column, Refused, Section, Table } from '../../../ui/index.ts';
import { TextDialog } from './text-dialog.tsx';
import { TextVersions, versionName } from './text-versions.tsx';

interface Asked {
  what: 'edit' | 'versions';
  text: TextVersion;
}

function columns(readOnly: string | undefined, ask: (asked: Asked) => void): Column<TextVersion>[] {
  return [
    {
      key: 'kind',
      header: 'Text',
      cell: ({ kind }) => (
        <>
          {TEXTS[kind].name}
          <span className="text-purpose soft">{TEXTS[kind].purpose}</span>
        </>
      ),
    },
    {
      key: 'version',
      header: 'In use',
      cell: (text) =>
        text.savedOn === null ? versionName(text) : `${versionName(text)}, ${formatDay(text.savedOn)}`,
    },
    {
      key: 'actions',
      header: 'Edit',
      headerHidden: true,
      cell: (text) => (
        <span className="row">
          <Button
            label={`Edit the text: ${TEXTS[text.kind].name}`}
            disabled={readOnly !== undefined}
            reason={readOnly}
            onClick={() => ask({ what: 'edit', text })}
          >
            Edit
          </Button>
          <Button
            kind="quiet"
            label={`Versions of the text: ${TEXTS[text.kind].name}`}
            onClick={() => ask({ what: 'versions', text })}
          >
            Versions
          </Button>
        </span>
      ),
    },
  ];
}

/** The texts that are filled in, each with its versions. */
export function TextsPart({ readOnly }: { readOnly: string | undefined }) {
  const texts = useQueryOf('templates.texts', {});
  const [asked, setAsked] = useState<Asked>();
  const close = () => setAsked(undefined);
  return (
    <Section title="Texts">
      <div className="stack">
        <p>
          What is written to channels and printed in books. Nothing is sent by the program; every save keeps
          the version before.
        </p>
        <Refused refusal={texts.error} />
        {texts.data ? (
          <Table
            caption="Texts in use"
            columns={columns(readOnly, setAsked)}
            rows={texts.data.texts}
            rowKey={({ kind }) => kind}
          />
        ) : null}
      </div>
      {asked?.what === 'edit' ? <TextDialog text={asked.text} onClose={close} /> : null}
      {asked?.what === 'versions' ? (
        <TextVersions kind={asked.text.kind} readOnly={readOnly} onClose={close} />
      ) : null}
    </Section>
  );
}
