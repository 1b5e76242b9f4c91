import type { CallRefused } from '../../../api.ts';

/** Answers the sentence that concerns an input, by the input's path in the contract, such as `subjects.0.code`. */
export type ErrorOf = (path: string) => string | undefined;

/**
 * The sentences of a refusal by input. The host names the path before its sentence; beside the input itself the
 * path is left out. `prefix` is where the inputs of the form lie inside the command, such as `changes.`.
 */
export function errorsOf(refusal: CallRefused | undefined, prefix = ''): ErrorOf {
  return (path) => {
    const field = prefix + path;
    if (!refusal || refusal.field !== field) return undefined;
    const named = `${field}: `;
    return refusal.message.startsWith(named) ? refusal.message.slice(named.length) : refusal.message;
  };
}

/** The sentence of a refusal that concerns a list as a whole or something in it that has no input of its own. */
export function errorWithin(refusal: CallRefused | undefined, list: string): string | undefined {
  const field = refusal?.field;
  if (!refusal || field === undefined || (field !== list && !field.startsWith(`${list}.`))) return undefined;
  return errorsOf(refusal)(field);
}
