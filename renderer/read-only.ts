import { useQueryOf } from './api.ts';
import { formatDay } from './lib/dates.ts';
import { useAsOf } from './location.ts';

/** Why nothing can be changed just now, as one sentence for a button's `reason`; undefined when changes are possible. */
export function useReadOnly(): string | undefined {
  const { asOf } = useAsOf();
  const info = useQueryOf('catalogue.info', {});
  if (asOf !== undefined)
    return `You are looking at ${formatDay(asOf)}; go back to today to change anything.`;
  return info.data?.readOnly ? 'This catalogue is open for reading only.' : undefined;
}
