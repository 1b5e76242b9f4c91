import { useCommand } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, Standing } from '../../ui/index.ts';
import type { Audit } from './words.ts';

function AcceptedLine({ finding }: { finding: Audit['accepted'][number] }) {
  const reopen = useCommand('audit.reopen');
  const readOnly = useReadOnly();
  const { id, reason, on, reviewOn } = finding.accepted;
  return (
    <li>
      <Standing of="severity" value={finding.severity} /> {finding.message}
      <span className="soft finding-accepted">
        “{reason}” Accepted on {formatDay(on)}, to be looked at again on {formatDay(reviewOn)}.
      </span>
      {readOnly === undefined ? (
        <Button
          kind="quiet"
          label={`Open again: ${finding.message}`}
          pending={reopen.pending}
          onClick={() => void reopen.run({ id }, 'The finding is open again.')}
        >
          Open again
        </Button>
      ) : null}
    </li>
  );
}

/** Findings that were accepted for the time being, with why and until when. */
export function Accepted({ accepted, whole }: { accepted: Audit['accepted']; whole: boolean }) {
  return (
    <details className="audit-accepted" open={whole || undefined}>
      <summary>Show what was accepted ({accepted.length.toLocaleString()})</summary>
      <ul>
        {accepted.map((finding) => (
          <AcceptedLine key={finding.fingerprint} finding={finding} />
        ))}
      </ul>
    </details>
  );
}
