import type { OutputOf } from '../../../../src/contract/index.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Dialog, Notice, Refused } from '../../../ui/index.ts';

type Late = NonNullable<OutputOf<'proofs.record'>['late']>;

/** Says that the day of sale can no longer be kept, and offers to move the release. */
export function LateDialog({ late, onClose }: { late: Late; onClose: () => void }) {
  const redate = useCommand('plans.redate');
  const { planId } = late;
  const move = async (plan: number) => {
    const answer = await redate.run(
      { planId: plan, day: late.earliest },
      `The release is on ${late.earliest} now.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <Dialog
      open
      onClose={onClose}
      title="The day of sale is in danger"
      width="narrow"
      footer={
        <>
          {planId === null ? null : (
            <Button kind="primary" pending={redate.pending} onClick={() => void move(planId)}>
              Move the release to {late.earliest}
            </Button>
          )}
          <Button onClick={onClose}>Keep {formatDay(late.saleDay)}</Button>
        </>
      }
    >
      <div className="stack">
        <Notice tone="care" title={`It was to be on sale on ${formatDay(late.saleDay)}.`}>
          With a new file, a new proof and the days the channel takes, the earliest day is {late.earliest}.
          Moving the release moves it everywhere, so that the same day stands on every channel.
        </Notice>
        <Refused refusal={redate.refusal} />
      </div>
    </Dialog>
  );
}
