import type { CommandName } from '../contract/index.ts';
import type { CommandHandler } from './context.ts';

/** Every command by its name. */
export const commands: Partial<{ [N in CommandName]: CommandHandler<N> }> = {};
