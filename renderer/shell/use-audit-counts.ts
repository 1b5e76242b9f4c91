import { useQueryOf } from '../api.ts';

/** Milliseconds between two looks at an audit that is being worked out. */
const LOOK_MS = 1_000;

/**
 * How many findings there are on a day, today when none is named. Of a large catalogue the store works them out between
 * other calls: until then `counts` is not there, and `done` of `total` works are judged.
 */
export function useAuditCounts(asOf: string | undefined) {
  const past = useQueryOf('audit.count', { asOf }, { keep: true, enabled: asOf !== undefined });
  const now = useQueryOf(
    'audit.progress',
    {},
    { enabled: asOf === undefined, again: (data) => data?.counts === null && LOOK_MS },
  );
  if (asOf !== undefined) return { counts: past.data ?? null, done: 0, total: 0, error: past.error };
  return { counts: null, done: 0, total: 0, ...now.data, error: now.error };
}
