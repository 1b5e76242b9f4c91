import type { OutputOf } from '../../../../src/contract/index.ts';
import type { LeadTime } from '../../../../src/contract/plan-previews.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Notice, Refused } from '../../../ui/index.ts';
import { counted } from '../parts/names.ts';

type Preview = OutputOf<'plans.previewRelease'>;

/** Whether a day can be kept, and which is the first that can. */
function Reach({ preview, onDay }: { preview: Preview; onDay: (day: string) => void }) {
  const { day, earliest, withoutHaste, shortBy } = preview;
  const choose = (other: string, words: string) => (
    <Button kind="quiet" onClick={() => onDay(other)}>
      {words} {other}
    </Button>
  );
  if (shortBy > 0)
    return (
      <Notice
        tone="care"
        title={`${formatDay(day)} cannot be kept: it comes ${counted(shortBy, 'working day')} too early.`}
        action={choose(earliest, 'Take')}
      >
        No day before {earliest} leaves every channel its time.
      </Notice>
    );
  if (day < withoutHaste)
    return (
      <Notice title={`${formatDay(day)} can be kept, with some haste.`} action={choose(withoutHaste, 'Take')}>
        From {withoutHaste} on, every step has the days it is given.
      </Notice>
    );
  return (
    <Notice tone="done" title={`${formatDay(day)} can be kept.`}>
      The earliest day would be {earliest}.
    </Notice>
  );
}

/** What a channel took so far, with one press to go by it from now on. */
function Learned({ channel }: { channel: LeadTime }) {
  const update = useCommand('channels.update');
  const { channelName, leadDays, learnedLeadDays, toProof, toSale } = channel;
  if (learnedLeadDays === null || learnedLeadDays === leadDays) return null;
  const count = Math.max(toProof?.count ?? 0, toSale?.count ?? 0);
  const slowest = (toProof?.slowest ?? 0) + (toSale?.slowest ?? 0);
  return (
    <li>
      {channelName} took {counted(learnedLeadDays, 'working day')} (slowest {slowest.toLocaleString()}, of{' '}
      {count.toLocaleString()}); recorded {leadDays === 1 ? 'is' : 'are'} {leadDays.toLocaleString()}.{' '}
      <Button
        kind="quiet"
        label={`Go by ${learnedLeadDays} working days for ${channelName}`}
        pending={update.pending}
        onClick={() =>
          void update.run(
            { id: channel.channelId, leadDays: learnedLeadDays },
            `${channelName} is counted with ${counted(learnedLeadDays, 'working day')} from now on.`,
          )
        }
      >
        Go by {learnedLeadDays.toLocaleString()}
      </Button>
      <Refused refusal={update.refusal} />
    </li>
  );
}

function LeadTimes({ names }: { names: readonly string[] }) {
  const channels = useQueryOf('channels.leadTimes', {}).data?.channels ?? [];
  const known = channels.filter(
    ({ channelName, learnedLeadDays, leadDays }) =>
      names.includes(channelName) && learnedLeadDays !== null && learnedLeadDays !== leadDays,
  );
  if (known.length === 0) return null;
  return (
    <div>
      <p className="soft">From what happened so far:</p>
      <ul className="lead-times">
        {known.map((channel) => (
          <Learned key={channel.channelId} channel={channel} />
        ))}
      </ul>
    </div>
  );
}

interface ReleasePreviewProps {
  editionId: number;
  day: string;
  printedProof: boolean | null;
  onDay: (day: string) => void;
}

/** The plan before it is made: whether its day can be kept, what decides, and every task with its day. */
export function ReleasePreview({ editionId, day, printedProof, onDay }: ReleasePreviewProps) {
  const asked = day === '' ? {} : { day };
  const query = useQueryOf('plans.previewRelease', { editionId, printedProof, ...asked }, { keep: true });
  const preview = query.data;
  if (!preview) return <Refused refusal={query.error} />;
  const [slowest] = preview.channels;
  return (
    <div className="stack">
      {day === '' ? (
        <Notice
          title={`The earliest day that can be kept is ${preview.earliest}.`}
          action={
            <Button kind="quiet" onClick={() => onDay(preview.withoutHaste)}>
              Take {preview.withoutHaste}
            </Button>
          }
        >
          From {preview.withoutHaste} on, every step has the days it is given.
        </Notice>
      ) : (
        <Reach preview={preview} onDay={onDay} />
      )}
      {slowest ? (
        <p className="soft">
          {preview.submitOn ? `Everything is sent on ${formatDay(preview.submitOn)}. ` : ''}
          {slowest.channelName} decides, with {counted(slowest.days, 'working day')}.
        </p>
      ) : null}
      <LeadTimes names={preview.channels.map(({ channelName }) => channelName)} />
      <details>
        <summary>Look at the {counted(preview.tasks.length, 'task')} of this plan</summary>
        <ol className="preview-tasks">
          {preview.tasks.map(({ key, title, dueOn }) => (
            <li key={key}>
              <time dateTime={dueOn} className="mono">
                {formatDay(dueOn)}
              </time>{' '}
              {title}
            </li>
          ))}
        </ol>
      </details>
    </div>
  );
}
