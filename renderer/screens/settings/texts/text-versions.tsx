import type { TextVersion } from '../../../../src/contract/templates.ts';
import { TEXTS, type TextKind } from '../../../../src/contract/text-kinds.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Dialog, Refused } from '../../../ui/index.ts';

/** 'Version 3' or, for version 0, our own wording. */
export function versionName({ version }: { version: number }): string {
  return version === 0 ? 'As delivered' : `Version ${version}`;
}

interface VersionProps {
  version: TextVersion;
  inUse: boolean;
  readOnly: string | undefined;
  onPutBack: () => void;
  pending: boolean;
}

function Version({ version, inUse, readOnly, onPutBack, pending }: VersionProps) {
  const name = versionName(version);
  return (
    <li className="text-version">
      <details>
        <summary>
          <strong>{name}</strong>
          {inUse ? ', in use' : ''}
          {version.savedOn === null ? '' : `, saved on ${formatDay(version.savedOn)}`}
          {version.note === '' ? '' : `: ${version.note}`}
        </summary>
        <div className="stack">
          {version.subject === '' ? null : (
            <p>
              Subject: <span className="mono">{version.subject}</span>
            </p>
          )}
          <pre className="text-example">{version.body}</pre>
        </div>
      </details>
      {inUse ? null : (
        <Button
          kind="quiet"
          label={`Put back: ${name}`}
          pending={pending}
          disabled={readOnly !== undefined}
          reason={readOnly}
          onClick={onPutBack}
        >
          Put back
        </Button>
      )}
    </li>
  );
}

interface TextVersionsProps {
  kind: TextKind;
  readOnly: string | undefined;
  onClose: () => void;
}

/** Every version of a text, to read and to put back. */
export function TextVersions({ kind, readOnly, onClose }: TextVersionsProps) {
  const list = useQueryOf('templates.textVersions', { kind });
  const putBack = useCommand('templates.putBackText');
  const versions = list.data?.versions ?? [];
  return (
    <Dialog
      open
      onClose={onClose}
      title={`Versions: ${TEXTS[kind].name}`}
      footer={<Button onClick={onClose}>Done</Button>}
    >
      <div className="stack">
        <p className="soft">Putting an older one back makes it the newest; nothing is lost.</p>
        <Refused refusal={list.error ?? putBack.refusal} />
        <ul className="text-versions">
          {versions.map((version, at) => (
            <Version
              key={version.version}
              version={version}
              inUse={at === 0}
              readOnly={readOnly}
              pending={putBack.pending}
              onPutBack={() =>
                void putBack.run(
                  { kind, version: version.version },
                  `${versionName(version)} is in use again.`,
                )
              }
            />
          ))}
        </ul>
      </div>
    </Dialog>
  );
}
