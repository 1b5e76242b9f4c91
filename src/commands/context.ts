import type { CommandName, OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { WriteDb } from '../store/connection.ts';

/** What a command works with: the open transaction and the local calendar day. */
export interface CommandContext {
  readonly db: WriteDb;
  /** YYYY-MM-DD */
  readonly today: string;
}

/** Carries out one command inside its transaction: load → rule → write. Throws a Refusal to undo it all. */
export type CommandHandler<N extends CommandName> = (
  context: CommandContext,
  input: ParsedInputOf<N>,
) => OutputOf<N>;

/** The handlers of one noun's file, by operation name: `export const planCommands = {…} satisfies Commands<'plans.release' | …>`. */
export type Commands<N extends CommandName> = { [K in N]: CommandHandler<K> };
