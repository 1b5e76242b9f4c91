import type { QueryName } from '../contract/index.ts';
import type { QueryHandler } from './context.ts';

/** Every query by its name. */
export const queries: Partial<{ [N in QueryName]: QueryHandler<N> }> = {};
