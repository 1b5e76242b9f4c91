/**
 * The fields of `wanted` that differ from `now`, compared by value; fields not named are left alone. Answers
 * only those, so that an unchanged field is never written, locked or journalled.
 */
export function changesOf<T extends object>(now: T, wanted: Partial<T>): Partial<T> {
  const changed: Partial<T> = {};
  for (const key of Object.keys(wanted) as (keyof T)[]) {
    const value = wanted[key];
    if (value !== undefined && JSON.stringify(value) !== JSON.stringify(now[key])) changed[key] = value;
  }
  return changed;
}
