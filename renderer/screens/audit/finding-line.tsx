import { useState } from 'react';
import { Link } from 'wouter';
import { useReadOnly } from '../../read-only.ts';
import { Button, ConfirmDialog } from '../../ui/index.ts';
import { AcceptDialog } from './accept-dialog.tsx';
import { useMending } from './use-mending.ts';
import { type Finding, type Mending, routeOfFinding } from './words.ts';

/** One press that mends a finding, with what it will do; what is for ever is asked once more. */
function MendButton({ mending, about }: { mending: Mending; about: string }) {
  const { run, pending } = useMending();
  const [asking, setAsking] = useState(false);
  const carryOut = async () => {
    if (await run(mending)) setAsking(false);
  };
  return (
    <span className="finding-press">
      <Button
        kind="plain"
        label={`${mending.label}: ${about}`}
        pending={pending}
        onClick={() => (mending.lasting ? setAsking(true) : void carryOut())}
      >
        {mending.label}
      </Button>
      <span className="soft">{mending.does}</span>
      <ConfirmDialog
        open={asking}
        onClose={() => setAsking(false)}
        title={`${mending.label}?`}
        confirm={mending.label}
        pending={pending}
        onConfirm={() => void carryOut()}
      >
        <p>{mending.does}</p>
      </ConfirmDialog>
    </span>
  );
}

/** What was found, where it is, how one press mends it, and the way to leave it as it is. */
export function FindingLine({ finding }: { finding: Finding }) {
  const route = routeOfFinding(finding);
  const readOnly = useReadOnly();
  const [accepting, setAccepting] = useState(false);
  return (
    <li>
      {finding.message}{' '}
      {route ? (
        <Link href={route.to} aria-label={`${route.label}: ${finding.message}`} className="nowrap">
          {route.label}
        </Link>
      ) : null}
      {readOnly === undefined ? (
        <span className="finding-presses">
          {finding.mending ? <MendButton mending={finding.mending} about={finding.message} /> : null}
          <Button kind="quiet" label={`Accept: ${finding.message}`} onClick={() => setAccepting(true)}>
            Accept…
          </Button>
        </span>
      ) : null}
      {accepting ? <AcceptDialog finding={finding} onClose={() => setAccepting(false)} /> : null}
    </li>
  );
}
