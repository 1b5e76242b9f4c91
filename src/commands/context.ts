import type { CommandName, OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { Step } from '../contract/jobs.ts';
import type { WriteDb } from '../store/connection.ts';
import type { Staging } from '../store/staging.ts';

/** What a command works with: the open transaction and the local calendar day. */
export interface CommandContext {
  readonly db: WriteDb;
  /** YYYY-MM-DD */
  readonly today: string;
}

/** What a command that may take long works with, one whose input names a `job`. */
export interface LongCommandContext extends CommandContext {
  /** Files on their way in and out. */
  readonly files: Staging;
  /** Tells how far long work has come; throws CANCELLED. */
  readonly step: Step;
}

/** Carries out one command inside its transaction: load → rule → write. Throws a Refusal to undo it all. */
export type CommandHandler<N extends CommandName> = (
  context: 'job' extends keyof ParsedInputOf<N> ? LongCommandContext : CommandContext,
  input: ParsedInputOf<N>,
) => OutputOf<N>;

/** The handlers of one noun's file, by operation name: `export const planCommands = {…} satisfies Commands<'plans.release' | …>`. */
export type Commands<N extends CommandName> = { [K in N]: CommandHandler<K> };
