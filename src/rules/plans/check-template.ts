import {
  ANCHORS,
  OWN_KIND,
  type PlanKind,
  type PlanStep,
  STEP_PLACEHOLDERS,
} from '../../contract/plan-templates.ts';
import { DEFAULT_STEPS } from './default-templates.ts';
import { movesTo } from './kinds.ts';

/** What is wrong with the steps of a plan: at which step (from 0) and field, in a sentence. */
export interface StepFault {
  at: number;
  field: keyof PlanStep;
  sentence: string;
}

/** Steps that carry the plan: they stay on, on their own day. */
const CARRYING: Readonly<Record<PlanKind, readonly string[]>> = {
  release: ['submit', 'on-sale'],
  retirement: ['ask-removal', 'confirm-gone'],
};

/** Fields of a step of ours that say what it is. */
const OURS = ['kind', 'scope', 'made', 'proof'] as const;
const FIXED_DAY = ['days', 'side', 'anchor'] as const;
const FIXED_WHY: Readonly<Record<string, string>> = {
  submit: 'everything is submitted on one day, so that the same data appears everywhere',
  'on-sale': 'everything goes on sale on the release day',
  'ask-removal': 'every channel is asked on the day of the plan, or when the replacement sells',
};

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
const quoted = (step: PlanStep | undefined) => `'${step?.title ?? ''}'`;

/** Steps that come first though the list does not say so: a listing takes its standings in order. */
export function impliedNeeds(steps: readonly PlanStep[]): Map<string, string[]> {
  const implied = new Map<string, string[]>();
  let before: PlanStep[] = [];
  let alike: PlanStep[] = [];
  for (const step of steps.filter((entry) => movesTo(entry.kind) !== null && entry.kind !== 'take-back')) {
    if (alike.length > 0 && alike[0]?.kind !== step.kind) {
      before = alike;
      alike = [];
    }
    alike.push(step);
    implied.set(
      step.key,
      before.map(({ key }) => key),
    );
  }
  return implied;
}

function ownFaults(kind: PlanKind, step: PlanStep): Omit<StepFault, 'at'>[] {
  const faults: Omit<StepFault, 'at'>[] = [];
  const anchors: readonly string[] = ANCHORS[kind];
  if (!anchors.includes(step.anchor))
    faults.push({
      field: 'anchor',
      sentence: `${quoted(step)} is counted from a day that a ${kind} plan does not have.`,
    });
  if (step.side === 'before' && ['request', 'promise', 'replacement'].includes(step.anchor))
    faults.push({
      field: 'side',
      sentence: `${quoted(step)} can only come after that day, which is not known beforehand; count it from the day of the plan instead.`,
    });
  const known: readonly string[] = STEP_PLACEHOLDERS[step.scope];
  for (const [typed, name = ''] of step.title.matchAll(/\{([^{}]*)\}/g))
    if (!known.includes(name))
      faults.push({
        field: 'title',
        sentence: `Nothing fills ${typed} in ${quoted(step)}; it can use ${known.map((one) => `{${one}}`).join(', ')}.`,
      });
  return faults;
}

/** What a step of ours may not become. */
function ourFaults(kind: PlanKind, step: PlanStep, ours: PlanStep): Omit<StepFault, 'at'>[] {
  const changed = OURS.find((field) => !same(step[field], ours[field]));
  if (changed)
    return [
      {
        field: changed,
        sentence: `${quoted(step)} is a step of the program; what it is done for stays as it is. Add a step of your own instead.`,
      },
    ];
  if (!CARRYING[kind].includes(ours.kind)) return [];
  if (!step.on)
    return [{ field: 'on', sentence: `${quoted(step)} carries the plan and cannot be switched off.` }];
  const fixed = FIXED_WHY[ours.kind];
  const moved = fixed === undefined ? undefined : FIXED_DAY.find((field) => step[field] !== ours[field]);
  return moved ? [{ field: moved, sentence: `The day of ${quoted(step)} is fixed: ${fixed}.` }] : [];
}

/** The steps of a circle of needs, in order; undefined where there is none. */
export function circleOf(steps: readonly PlanStep[]): PlanStep[] | undefined {
  const byKey = new Map(steps.map((step) => [step.key, step]));
  const implied = impliedNeeds(steps);
  const done = new Set<string>();
  const visit = (step: PlanStep, path: PlanStep[]): PlanStep[] | undefined => {
    const at = path.indexOf(step);
    if (at >= 0) return path.slice(at);
    if (done.has(step.key)) return undefined;
    // A day that follows from asking comes after asking.
    const asks = ['request', 'promise'].includes(step.anchor) ? ['ask-removal'] : [];
    for (const key of [...step.needs, ...(implied.get(step.key) ?? []), ...asks]) {
      const need = byKey.get(key);
      const circle = need && visit(need, [...path, step]);
      if (circle) return circle;
    }
    done.add(step.key);
    return undefined;
  };
  for (const step of steps) {
    const circle = visit(step, []);
    if (circle) return circle;
  }
  return undefined;
}

function keyFaults(steps: readonly PlanStep[]): StepFault[] {
  const keys = new Set(steps.map(({ key }) => key));
  return steps.flatMap((step, at): StepFault[] => {
    if (steps.findIndex(({ key }) => key === step.key) < at)
      return [{ at, field: 'key', sentence: `Two steps have the short name ${step.key}; give one another.` }];
    const missing = step.needs.find((need) => !keys.has(need));
    if (missing !== undefined)
      return [
        { at, field: 'needs', sentence: `${quoted(step)} needs ${missing}, and there is no such step.` },
      ];
    return [];
  });
}

/** Everything wrong with the steps of a plan; an empty list is a sound template. */
export function checkSteps(kind: PlanKind, steps: readonly PlanStep[]): StepFault[] {
  const ours = new Map(DEFAULT_STEPS[kind].map((step) => [step.key, step]));
  const faults = steps.flatMap((step, at): StepFault[] => {
    const our = ours.get(step.key);
    const own: Omit<StepFault, 'at'>[] =
      our || step.kind === OWN_KIND
        ? []
        : [{ field: 'kind', sentence: `${quoted(step)} is a step of your own and does not move a listing.` }];
    return [...(our ? ourFaults(kind, step, our) : own), ...ownFaults(kind, step)].map((fault) => ({
      at,
      ...fault,
    }));
  });
  const gone = [...ours.values()].find((our) => !steps.some(({ key }) => key === our.key));
  const lost: StepFault[] = gone
    ? [
        {
          at: 0,
          field: 'key',
          sentence: `${quoted(gone)} is a step of the program and stays in the list; switch it off instead.`,
        },
      ]
    : [];
  const found = [...faults, ...lost, ...keyFaults(steps)];
  const circle = found.length === 0 ? circleOf(steps) : undefined;
  const first = circle?.[0];
  if (!circle || !first) return found;
  const way = [...circle.slice(1), first].map(quoted).join(', which needs ');
  return [{ at: steps.indexOf(first), field: 'needs', sentence: `${quoted(first)} needs ${way}: a circle.` }];
}
