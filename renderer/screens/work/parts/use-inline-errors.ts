import { useEffect, useState } from 'react';
import type { OperationName } from '../../../../src/contract/index.ts';
import type { CallRefused } from '../../../api.ts';
import { type ErrorOf, errorsOf } from './refusals.ts';

type WrongFields = typeof import('../../../contract-check.ts').wrongFields;

function at(input: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((value, key) => {
    if (typeof value !== 'object' || value === null) return undefined;
    return (value as Record<string, unknown>)[key];
  }, input);
}

/**
 * What the contract finds wrong with the fields that were touched, while they are typed. A field that is still empty
 * is not called wrong until the form is sent. The contract comes with the first look and is then at hand.
 */
export function useInlineErrors(name: OperationName, touched: object): ErrorOf {
  const [check, setCheck] = useState<{ wrongFields: WrongFields }>();
  useEffect(() => {
    let gone = false;
    void import('../../../contract-check.ts').then(({ wrongFields }) => {
      if (!gone) setCheck({ wrongFields });
    });
    return () => {
      gone = true;
    };
  }, []);
  const wrong = check?.wrongFields(name, touched);
  return (path) => {
    const value = at(touched, path);
    return value === '' || value === undefined ? undefined : wrong?.get(path);
  };
}

/**
 * The sentences of a form: those of the last refusal, else what the contract finds wrong with what is being typed.
 * `prefix` is where the inputs of the form lie inside the command, such as `changes.`.
 */
export function useErrors(
  name: OperationName,
  touched: object,
  refusal: CallRefused | undefined,
  prefix = '',
): ErrorOf {
  const inline = useInlineErrors(name, touched);
  const refused = errorsOf(refusal, prefix);
  return (path) => refused(path) ?? inline(prefix + path);
}
