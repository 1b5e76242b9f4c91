import type { Answer } from './contract/operation.ts';

/** How a catalogue is opened. `today` and `now` are the clock, replaceable in tests. */
export interface OpenOptions {
  /** Path of the `.ledger` file; it is made when missing. */
  file: string;
  readOnly?: boolean;
  /** Local calendar day, YYYY-MM-DD. */
  today?: () => string;
  /** Moment for the journal. */
  now?: () => Date;
}

/** An open catalogue: the one import for electron, host, command line and tests. Calls are synchronous inside. */
export interface App {
  /** Runs an operation of the contract by name; never throws for refusals. */
  call(name: string, input: unknown): Answer<unknown>;
  /** Calls back after every command that changed something, with the journal's newest sequence number. */
  onChange(listener: (seq: number) => void): () => void;
  close(): void;
}
