import { useState } from 'react';
import type { InputOf, OperationName, OutputOf } from '../../../../src/contract/index.ts';
import { CallRefused, call } from '../../../api.ts';
import { announce, dismissStatus } from '../../../status.ts';

/** Calls an operation when it is pressed, and keeps its refusal; work that was called off is no refusal. */
export function useCallNow() {
  const [refusal, setRefusal] = useState<CallRefused>();
  const now = async <N extends OperationName>(
    name: N,
    input: InputOf<N>,
  ): Promise<OutputOf<N> | undefined> => {
    setRefusal(undefined);
    // A message of earlier work would lie over how far this has come, and be taken for its own.
    dismissStatus();
    try {
      return await call(name, input);
    } catch (thrown) {
      const refused =
        thrown instanceof CallRefused
          ? thrown
          : new CallRefused({ code: 'INTERNAL', message: String(thrown) });
      if (refused.code === 'CANCELLED') announce(refused.message);
      else {
        setRefusal(refused);
        announce(refused.message, 'refused');
      }
      return undefined;
    }
  };
  return { now, refusal, clear: () => setRefusal(undefined) };
}
