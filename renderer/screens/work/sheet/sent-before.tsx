import type { Sheet } from '../../../../src/contract/submissions.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Section } from '../../../ui/index.ts';

type Sent = Sheet['submissions'][number];

function Submission({ sent }: { sent: Sent }) {
  const name = sent.kind === 'sent' ? 'Sent' : 'Changes sent';
  return (
    <li>
      <details className="sent">
        <summary>
          {name} on <time dateTime={sent.on}>{formatDay(sent.on)}</time>
          {sent.note === '' ? null : <span className="soft"> · {sent.note}</span>}
        </summary>
        {sent.takenOn === sent.on ? null : (
          <p className="soft">Recorded on {formatDay(sent.takenOn)}; the values are those of that day.</p>
        )}
        <dl className="key-value">
          {sent.items
            .filter((item) => item.value !== '')
            .map((item) => (
              <div key={item.label}>
                <dt>{item.label}</dt>
                <dd className="prose">{item.value}</dd>
              </div>
            ))}
        </dl>
      </details>
    </li>
  );
}

/** Every sheet that was sent, as it was, the newest first. */
export function SentBefore({ sheet }: { sheet: Sheet }) {
  if (sheet.submissions.length === 0 && sheet.standing === 'unsent') return null;
  return (
    <Section title="What was sent">
      {sheet.submissions.length === 0 ? (
        <p className="soft">It was sent before sheets were kept here, so nothing can be compared.</p>
      ) : (
        <ul className="plain-list">
          {sheet.submissions.map((sent) => (
            <Submission key={sent.id} sent={sent} />
          ))}
        </ul>
      )}
    </Section>
  );
}
