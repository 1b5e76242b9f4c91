import { Refusal } from '../contract/refusal.ts';

/** What a JSON file holds, not yet checked for what it should be. Throws BAD_INPUT where it is no JSON in UTF-8. */
export function readJsonFile(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    const why = error instanceof SyntaxError ? error.message.slice(0, 120) : 'it is not UTF-8';
    throw new Refusal('BAD_INPUT', `This file is no JSON: ${why}.`, 'file');
  }
}
