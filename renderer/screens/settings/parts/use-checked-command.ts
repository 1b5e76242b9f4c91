import { type RefObject, useEffect, useRef, useState } from 'react';
import type { z } from 'zod';
import type { InputOf, OperationName, OutputOf } from '../../../../src/contract/index.ts';
import type { Answer } from '../../../../src/contract/operation.ts';
import { type CallRefused, useCommand } from '../../../api.ts';
import { announce } from '../../../status.ts';
import { checkInput, type FieldErrors } from './input-check.ts';

/** A command whose input is held against the contract before it is sent. */
export interface CheckedCommand<N extends OperationName> {
  /** Put on the form: after a refusal the first wrong field in it takes the focus. */
  form: RefObject<HTMLFormElement | null>;
  /** Answers undefined where the input was not sent; `own` are sentences the form found by itself. */
  send(
    input: InputOf<N>,
    said?: string | ((value: OutputOf<N>) => string),
    own?: FieldErrors,
  ): Promise<Answer<OutputOf<N>> | undefined>;
  errorOf(field: string): string | undefined;
  pending: boolean;
  refusal: CallRefused | undefined;
  /** Takes the sentences away, as when the form is put back to what it was. */
  clear(): void;
}

const ONE = 'One field needs mending before this can be saved.';
const SEVERAL = 'Some fields need mending before this can be saved.';

/** Like `useCommand`, with every wrong field found at once and nothing sent until all are sound. */
export function useCheckedCommand<N extends OperationName>(name: N, schema: z.ZodType): CheckedCommand<N> {
  const command = useCommand(name);
  const form = useRef<HTMLFormElement>(null);
  const [errors, setErrors] = useState<FieldErrors>({});
  const [tries, setTries] = useState(0);
  useEffect(() => {
    if (tries > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [tries]);
  return {
    form,
    send: async (input, said, own = {}) => {
      const found = { ...checkInput(schema, input), ...own };
      setErrors(found);
      const wrong = Object.keys(found).length;
      if (wrong > 0) {
        command.clear();
        announce(wrong === 1 ? ONE : SEVERAL, 'refused');
        setTries((count) => count + 1);
        return undefined;
      }
      const answer = await command.run(input, said);
      if (!answer.ok) setTries((count) => count + 1);
      return answer;
    },
    errorOf: (field) => errors[field] ?? command.errorOf(field),
    pending: command.pending,
    refusal: command.refusal,
    clear: () => {
      setErrors({});
      command.clear();
    },
  };
}
