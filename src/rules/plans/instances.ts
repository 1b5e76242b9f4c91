import type { PlanStep } from '../../contract/plan-templates.ts';
import { impliedNeeds } from './check-template.ts';
import type { PlanListing } from './types.ts';

/** One thing to do: a step, for the edition, one format or one listing. */
export interface Instance {
  /** `step`, `step:formatId` or `step:listingId`. */
  key: string;
  step: PlanStep;
  title: string;
  formatId: number | null;
  listingId: number | null;
  listing: PlanListing | null;
  /** Keys of instances that come first; they stand before this one in the list. */
  needs: string[];
}

/** What a step can be done for, and what it is called there. */
export interface Subjects {
  listings: readonly PlanListing[];
  edition: string;
  replacement: string;
  /** Whether a step has anything to do for a subject; `listing` is null for a step done once. */
  wanted: (step: PlanStep, listing: PlanListing | null) => boolean;
}

function titleOf(step: PlanStep, listing: PlanListing | null, subjects: Subjects): string {
  const words: Record<string, string> = {
    edition: subjects.edition,
    replacement: subjects.replacement,
    format: listing?.formatName ?? '',
    channel: listing?.channelName ?? '',
  };
  return step.title.replace(/\{([^{}]*)\}/g, (typed: string, name: string) =>
    Object.hasOwn(words, name) ? (words[name] ?? '') : typed,
  );
}

function fits(step: PlanStep, listing: PlanListing): boolean {
  return (
    (step.made.length === 0 || step.made.includes(listing.made)) &&
    (step.scope !== 'listing' || step.proof.length === 0 || step.proof.includes(listing.proof))
  );
}

function made(step: PlanStep, listing: PlanListing | null, subjects: Subjects): Instance {
  const id = step.scope === 'format' ? listing?.formatId : listing?.id;
  return {
    key: step.scope === 'edition' ? step.key : `${step.key}:${id}`,
    step,
    title: titleOf(step, listing, subjects),
    formatId: step.scope === 'edition' ? null : (listing?.formatId ?? null),
    listingId: step.scope === 'listing' ? (listing?.id ?? null) : null,
    listing,
    needs: [],
  };
}

/** The instances of one step: once, for each format, or for each listing that it fits. */
function instancesOf(step: PlanStep, subjects: Subjects): Instance[] {
  if (!step.on) return [];
  if (step.scope === 'edition') return subjects.wanted(step, null) ? [made(step, null, subjects)] : [];
  const fitting = subjects.listings.filter((one) => fits(step, one) && subjects.wanted(step, one));
  if (step.scope === 'listing') return fitting.map((one) => made(step, one, subjects));
  const firsts = [...new Map(fitting.toReversed().map((one) => [one.formatId, one])).values()].toReversed();
  return firsts.map((one) => made(step, one, subjects));
}

const touches = (a: Instance, b: Instance) =>
  (a.listingId === null || b.listingId === null || a.listingId === b.listingId) &&
  (a.formatId === null || b.formatId === null || a.formatId === b.formatId);

/**
 * What an instance needs: the instances of the steps its step needs, about the same format and listing. Where a
 * step is off, or has nothing to do there, what that one needs takes its place.
 */
function needsOf(
  instance: Instance,
  all: ReadonlyMap<string, Instance[]>,
  needed: (key: string) => string[],
) {
  const found = new Set<string>();
  const seen = new Set<string>();
  const follow = (key: string) => {
    if (seen.has(key)) return;
    seen.add(key);
    const there = (all.get(key) ?? []).filter((other) => touches(instance, other));
    if (there.length > 0) for (const { key: name } of there) found.add(name);
    else for (const before of needed(key)) follow(before);
  };
  for (const key of needed(instance.step.key)) follow(key);
  return found;
}

/** Puts every instance behind what it needs, and leaves out needs that another need brings along. */
function inOrder(instances: readonly Instance[], needs: ReadonlyMap<string, Set<string>>): Instance[] {
  const byKey = new Map(instances.map((instance) => [instance.key, instance]));
  const before = new Map<string, Set<string>>();
  const ordered: Instance[] = [];
  const place = (instance: Instance): Set<string> => {
    const known = before.get(instance.key);
    if (known) return known;
    const own = [...(needs.get(instance.key) ?? [])];
    const further = new Set<string>();
    before.set(instance.key, further);
    for (const key of own) {
      const need = byKey.get(key);
      if (need) for (const earlier of place(need)) further.add(earlier);
    }
    const direct = own.filter((key) => !further.has(key));
    for (const key of own) further.add(key);
    ordered.push({ ...instance, needs: direct });
    return further;
  };
  for (const instance of instances) place(instance);
  return ordered;
}

/** Everything a template asks for, each behind what it needs: once, by format, and listing by listing. */
export function planInstances(steps: readonly PlanStep[], subjects: Subjects): Instance[] {
  const all = new Map(steps.map((step) => [step.key, instancesOf(step, subjects)]));
  const implied = impliedNeeds(steps);
  const byKey = new Map(steps.map((step) => [step.key, step]));
  const needed = (key: string) => [...(byKey.get(key)?.needs ?? []), ...(implied.get(key) ?? [])];
  const flat = [...all.values()].flat();
  const rank = (instance: Instance) => subjects.listings.findIndex(({ id }) => id === instance.listingId);
  const format = (instance: Instance) =>
    subjects.listings.findIndex(({ formatId }) => formatId === instance.formatId);
  const place = (a: Instance, b: Instance) => format(a) - format(b) || rank(a) - rank(b);
  // As the template has it: what is done once, by format and listing by listing, by whichever it names first.
  const scopes = [...new Set(steps.map(({ scope }) => scope))];
  const sorted = scopes.flatMap((scope) => flat.filter(({ step }) => step.scope === scope).toSorted(place));
  const needs = new Map(sorted.map((instance) => [instance.key, needsOf(instance, all, needed)]));
  return inOrder(sorted, needs);
}
