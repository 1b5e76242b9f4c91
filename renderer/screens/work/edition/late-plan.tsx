import { useCommand, useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Notice, Refused } from '../../../ui/index.ts';
import { counted } from '../parts/names.ts';

/** What is late about a release plan, whether its day still holds, and the way to the first day that does. */
export function LatePlan({
  planId,
  editionId,
  editable,
}: {
  planId: number;
  editionId: number;
  editable: boolean;
}) {
  const redate = useCommand('plans.redate');
  const plans = useQueryOf('plans.late', { editionId }).data?.plans ?? [];
  const plan = plans.find((one) => one.planId === planId);
  if (!plan) return null;
  const { late, shortBy, earliest, day } = plan;
  const titles = late.map(({ title }) => `‘${title}’`).join(', ');
  const move = () =>
    void redate.run(
      { planId, day: earliest },
      ({ moved }) => `${counted(moved, 'task')} moved; the plan is for ${earliest} now.`,
    );
  return (
    <Notice
      tone="care"
      title={
        shortBy === 0
          ? `${counted(late.length, 'task')} late; ${formatDay(day)} still holds.`
          : `${formatDay(day)} cannot be kept any more: it comes ${counted(shortBy, 'working day')} too early.`
      }
      action={
        shortBy > 0 && editable ? (
          <Button pending={redate.pending} onClick={move}>
            Move the release to {earliest}
          </Button>
        ) : undefined
      }
    >
      {late.length === 0 ? `The first day that can be kept is ${earliest}.` : `Late: ${titles}.`}
      <Refused refusal={redate.refusal} />
    </Notice>
  );
}
