import type { CommandName, OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { Step } from '../contract/jobs.ts';
import type { KeptAudit } from '../records/kept-audit.ts';
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

/** What a command works with whose input names a finding. */
interface JudgedCommandContext extends CommandContext {
  /** The audit as it stood before the command. */
  readonly audit: KeptAudit;
}

type ContextOf<Input> = 'job' extends keyof Input
  ? LongCommandContext
  : 'fingerprint' extends keyof Input
    ? JudgedCommandContext
    : CommandContext;

/** Carries out one command inside its transaction: load → rule → write. Throws a Refusal to undo it all. */
export type CommandHandler<N extends CommandName> = (
  context: ContextOf<ParsedInputOf<N>>,
  input: ParsedInputOf<N>,
) => OutputOf<N>;

/** The handlers of one noun's file, by operation name: `export const planCommands = {…} satisfies Commands<'plans.release' | …>`. */
export type Commands<N extends CommandName> = { [K in N]: CommandHandler<K> };
