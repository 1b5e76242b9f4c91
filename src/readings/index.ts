import type { ReadingName } from '../contract/index.ts';
import type { ReadingHandler } from './context.ts';
import { proofCheckReadings } from './proof-checks.ts';

/** Every reading by its name. */
export const readings: { [N in ReadingName]: ReadingHandler<N> } = { ...proofCheckReadings };
