import type { RefusalBody } from '../contract/refusal.ts';

/** 1: the catalogue refused. 2: the command was written wrongly or could not run. */
export type ExitCode = 1 | 2;

/** Ends a command with one sentence on stderr, or with an object there when `--json` is given. */
export class Failure extends Error {
  readonly body: RefusalBody;
  readonly exitCode: ExitCode;

  constructor(body: RefusalBody, exitCode: ExitCode) {
    super(body.message);
    this.body = body;
    this.exitCode = exitCode;
  }
}

/** A command that cannot be read: what is wrong, then the right form. */
export function misuse(what: string, form: string): Failure {
  const sentence = what.replace(/[.;]$/, '');
  return new Failure({ code: 'BAD_INPUT', message: `${sentence}; the form is: edition-ledger ${form}` }, 2);
}

/** What is wrong with the word after `isbn` or `block`; it comes before all options. */
export function unknownVerb(command: string, verb: string | undefined): string {
  return verb === undefined || verb.startsWith('-')
    ? 'Something is missing'
    : `There is no '${command} ${verb}'`;
}
