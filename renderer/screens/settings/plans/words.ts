import type { PlanKind, PlanStep } from '../../../../src/contract/plan-templates.ts';

export const PLAN_NAMES: Record<PlanKind, string> = { release: 'Release', retirement: 'Retirement' };

/** What a step is counted from, in plain words. */
export const ANCHOR_WORDS: Record<PlanStep['anchor'], string> = {
  submission: 'the day everything is sent',
  release: 'the release day',
  start: 'the day of the plan',
  replacement: 'the day the new edition sells',
  request: 'the day the channel is asked',
  promise: 'the day the channel promises to be done',
};

export const SCOPE_WORDS: Record<PlanStep['scope'], string> = {
  edition: 'once for the edition',
  format: 'for each format',
  listing: 'for each format on each channel',
};

/** '3 working days before the release day' */
export function whenInWords({ days, side, anchor }: Pick<PlanStep, 'days' | 'side' | 'anchor'>): string {
  if (days === 0) return `on ${ANCHOR_WORDS[anchor]}`;
  const counted = days === 1 ? '1 working day' : `${days.toLocaleString()} working days`;
  return `${counted} ${side} ${ANCHOR_WORDS[anchor]}`;
}

/** A short name that no other step has, made from a title: 'send-copies'. */
export function keyFor(title: string, taken: readonly string[]): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\{[^}]*\}/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '')
    .slice(0, 30)
    .replace(/-+$/, '');
  const base = plain === '' ? 'step' : plain;
  for (let number = 1; ; number += 1) {
    const key = number === 1 ? base : `${base}-${number}`;
    if (!taken.includes(key)) return key;
  }
}
