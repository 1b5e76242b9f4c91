import type { OutputOf } from '../../../src/contract/index.ts';
import { formatDay } from '../../lib/dates.ts';
import { Checkbox, Notice } from '../../ui/index.ts';

export type Slip = OutputOf<'plans.previewSlip'>;

interface SlipPreviewProps {
  slip: Slip;
  taskId: number;
  /** Whether the release is to move to the first day that can be kept. */
  move: boolean;
  onMove: (move: boolean) => void;
}

function reachOf({ day, shortBy, canSqueeze, earliest }: Slip) {
  const on = formatDay(day);
  if (shortBy === 0) return { tone: 'done' as const, title: `The release on ${on} still holds.` };
  const days = shortBy === 1 ? '1 working day' : `${shortBy.toLocaleString()} working days`;
  return {
    tone: 'care' as const,
    title: `The release on ${on} comes ${days} too early.`,
    text: canSqueeze
      ? `Keeping it leaves a channel less time than is recorded of it. The first day that can be kept is ${formatDay(earliest)}.`
      : `What follows does not fit in before it. The first day that can be kept is ${formatDay(earliest)}.`,
  };
}

/** What moves when a task of a release slips, whether the release day holds, and the choice to move it. */
export function SlipPreview({ slip, taskId, move, onMove }: SlipPreviewProps) {
  const { tone, title, text } = reachOf(slip);
  const others = slip.moves.filter(({ id }) => id !== taskId);
  return (
    <div className="stack">
      <Notice tone={tone} title={title}>
        {text}
      </Notice>
      {slip.shortBy > 0 ? (
        <Checkbox
          label={`Move the release to ${formatDay(slip.earliest)}, with everything that hangs on it`}
          checked={move}
          onChange={onMove}
          name="moveTo"
        />
      ) : null}
      {move ? null : (
        <details>
          <summary>
            {others.length === 0
              ? 'No other task moves'
              : `Tasks that move too: ${others.length.toLocaleString()}`}
          </summary>
          <ul>
            {others.map(({ id, title: name, from, to }) => (
              <li key={id}>
                {name}: {formatDay(from)} → {formatDay(to)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
