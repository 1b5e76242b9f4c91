import { Refusal } from '../contract/refusal.ts';
import { slipOf } from '../records/slips.ts';
import { dateStoredTask } from '../store/tasks.ts';
import type { CommandHandler } from './context.ts';
import { redatePlan } from './plan-changes.ts';

/** Lets a task of a release slip; the release keeps its day, or moves to another with everything that hangs on it. */
export const slipPlan: CommandHandler<'plans.slip'> = (context, input) => {
  const slip = slipOf(context, input);
  const { plan, days, moves, canSqueeze } = slip;
  const day = input.moveTo ?? plan.day;
  if (!canSqueeze)
    throw new Refusal(
      'STEP_REFUSED',
      `What comes after does not fit in before ${day}; the earliest release day is ${slip.earliest}.`,
      input.moveTo === undefined ? 'dueOn' : 'moveTo',
    );
  if (day !== plan.day) redatePlan(context, { planId: plan.id, day });
  for (const [id, dueOn] of days) dateStoredTask(context.db, id, dueOn);
  return { planId: plan.id, day, moved: moves.length };
};
