import type { Stock } from '../../contract/pictures.ts';
import type { Facts } from '../audit/facts.ts';
import { Stock as Counted, capacity } from '../audit/stock.ts';
import { runway } from '../isbn/runway.ts';

/** More points than a picture can show are thinned to so many. */
const MOST_POINTS = 500;

/** Each `n`-th point and the last one. */
function thinned<T>(points: readonly T[]): T[] {
  const step = Math.ceil(points.length / MOST_POINTS);
  return points.filter((_, index) => index % step === 0 || index === points.length - 1);
}

/** By day, how many numbers came in with a block and how many were taken. */
function changes(facts: Facts): Map<string, number> {
  const byDay = new Map<string, number>();
  const add = (day: string, by: number) => byDay.set(day, (byDay.get(day) ?? 0) + by);
  const taken = facts.numbers.flatMap((number) => {
    const days = [number.reservedOn, number.assignedOn, number.spentOn].filter((day) => day !== null);
    const [first] = days.sort();
    return number.block && first !== undefined ? [{ block: number.block, day: first }] : [];
  });
  const ofBlock = Map.groupBy(taken, (one) => one.block);
  for (const block of facts.blocks) {
    const uses = (ofBlock.get(block) ?? []).map(({ day }) => day);
    // A block whose day is not recorded, or recorded too late, was there when its first number was taken.
    const first = [block.boughtOn ?? facts.day, ...uses].sort()[0] ?? facts.day;
    add(first, capacity(block));
    for (const day of uses) add(day, -1);
  }
  return byDay;
}

/** How many numbers were left on which day, up to the day of the facts, and when they run out at the pace of late. */
export function stockOf(facts: Facts): Stock {
  const points: Stock['points'] = [];
  let free = 0;
  for (const [day, by] of [...changes(facts)].sort(([a], [b]) => (a < b ? -1 : 1))) {
    free += by;
    points.push({ day, free });
  }
  const assigned = facts.numbers.flatMap(({ assignedOn }) => (assignedOn === null ? [] : [assignedOn]));
  const left = new Counted(facts.blocks, facts.numbers).free;
  const { perYear, runsOutOn } = runway(assigned, Math.max(0, left), facts.day);
  const all = facts.blocks.reduce((sum, block) => sum + capacity(block), 0);
  return { day: facts.day, capacity: all, free: left, points: thinned(points), perYear, runsOutOn };
}
