import { useEffect, useState } from 'react';
import type { OperationName } from '../../../../src/contract/index.ts';
import type { ErrorOf } from './refusals.ts';

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
