import { useState } from 'react';
import { Link } from 'wouter';
import type { Edition, Lock } from '../../../../src/contract/editions.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Sign } from '../../../ui/index.ts';
import { HelpLink } from '../../help/help-link.tsx';
import { placeOf } from '../parts/go-to.ts';
import { fieldName, inSentence, listed } from '../parts/names.ts';
import { useWork } from '../parts/work-context.tsx';
import { CorrectDialog } from './correction.tsx';

const OPEN = ['description', 'keywords', 'subjects', 'audience'];

/** Since when and by what an edition is locked, what that holds, and the ways forward. */
export function LockNotice({ edition, lock }: { edition: Edition; lock: Lock }) {
  const fields = lock.fields.map((field) => fieldName(field).toLowerCase());
  const open = [...OPEN.filter((field) => !lock.fields.includes(field)), 'prices', 'terms'];
  return (
    <div className="lock-notice">
      <Sign name="padlock" />
      <div>
        <p>
          <strong>
            Locked since <time dateTime={lock.since}>{formatDay(lock.since)}</time>, sent to{' '}
            {lock.channelName}
          </strong>{' '}
          as {inSentence(lock.formatName)}.
        </p>
        <p className="soft">
          {sentence(listed(fields))} stay as they were sent. {sentence(listed(open))} stay open. {lock.source}{' '}
          <HelpLink topic="locks" section="why" />
        </p>
        <WayForward edition={edition} lock={lock} />
      </div>
    </div>
  );
}

/** With a capital at its head. */
function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function WayForward({ edition, lock }: { edition: Edition; lock: Lock }) {
  const { work, editable } = useWork();
  const [correcting, setCorrecting] = useState(false);
  if (edition.replacedById !== null)
    return (
      <p>
        What must change belongs in{' '}
        <Link href={placeOf(work.id, 'edition', edition.replacedById)}>the edition that replaces it</Link>.
      </p>
    );
  if (!lock.correctable || !editable)
    return (
      <p>
        If they must change: leave this edition as it is and prepare the next edition, with numbers of its
        own.
      </p>
    );
  return (
    <>
      <p className="row">
        <span>Everything was taken back and nothing was cleared, so a correction can be recorded.</span>
        <Button onClick={() => setCorrecting(true)}>Record a correction</Button>
      </p>
      {correcting ? <CorrectDialog edition={edition} onClose={() => setCorrecting(false)} /> : null}
    </>
  );
}
