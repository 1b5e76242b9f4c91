import type { Commands } from './context.ts';
import { dropPlan, redatePlan } from './plan-changes.ts';
import { planRelease } from './plan-release.ts';
import { planRetirement } from './plan-retirement.ts';
import { slipPlan } from './plan-slip.ts';

export const planCommands = {
  'plans.release': planRelease,
  'plans.retirement': planRetirement,
  'plans.redate': redatePlan,
  'plans.drop': dropPlan,
  'plans.slip': slipPlan,
} satisfies Commands<'plans.release' | 'plans.retirement' | 'plans.redate' | 'plans.drop' | 'plans.slip'>;
