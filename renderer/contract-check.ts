import { config } from 'zod';
import { badInput } from '../src/contract/bad-input.ts';
import { isOperationName, operations } from '../src/contract/index.ts';
import type { RefusalBody } from '../src/contract/refusal.ts';

// The pages' content policy forbids code that is made at run time, which zod would otherwise try.
config({ jitless: true });

/** What the contract finds wrong with an input before it is sent; undefined when it is sound. */
export function wrongInput(name: string, input: unknown): RefusalBody | undefined {
  if (!isOperationName(name)) {
    return { code: 'UNKNOWN_OPERATION', message: 'There is no operation of that name.' };
  }
  const parsed = operations[name].input.safeParse(input ?? {});
  return parsed.success ? undefined : badInput(parsed.error);
}

/** Whether an answer has the shape that the contract promises; `name` is that of an operation. */
export function isPromised(name: string, value: unknown): boolean {
  return isOperationName(name) && operations[name].output.safeParse(value).success;
}

/** Every sentence that the contract has for an input, by the path of the field it concerns. */
export function wrongFields(name: string, input: unknown): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  if (!isOperationName(name)) return found;
  for (const { path, message } of operations[name].input.safeParse(input).error?.issues ?? []) {
    const field = path.map(String).join('.');
    if (!found.has(field)) found.set(field, message);
  }
  return found;
}
