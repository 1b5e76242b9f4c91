import type { FormatFields } from './formats.ts';

/** What tells the formats of an edition apart. */
export type Distinct = Pick<FormatFields, 'form' | 'formDetail' | 'caseKind' | 'largePrint'>;

/** From the narrowest likeness to the widest. */
const LIKENESSES: ((old: Distinct, now: Distinct) => boolean)[] = [
  (old, now) =>
    old.form === now.form &&
    old.formDetail === now.formDetail &&
    old.largePrint === now.largePrint &&
    old.caseKind === now.caseKind,
  (old, now) =>
    old.form === now.form && old.formDetail === now.formDetail && old.largePrint === now.largePrint,
  (old, now) => old.form === now.form && old.largePrint === now.largePrint,
  (old, now) => old.form === now.form,
];

/**
 * The format of the old edition that each format of the new one follows: the most alike of the same product
 * form, each old one followed once. Undefined where the form is new.
 */
export function pairFormats<F extends Distinct>(olds: readonly F[], news: readonly F[]): Map<F, F> {
  const pairs = new Map<F, F>();
  const left = new Set(olds);
  for (const alike of LIKENESSES)
    for (const now of news) {
      if (pairs.has(now)) continue;
      const old = [...left].find((candidate) => alike(candidate, now));
      if (!old) continue;
      pairs.set(now, old);
      left.delete(old);
    }
  return pairs;
}
