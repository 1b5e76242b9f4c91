import { z } from 'zod';
import { isOperationName, isReadingName, operations } from '../../contract/index.ts';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { Failure, misuse } from '../failure.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';

const FORM = 'call OPERATION < INPUT.json';
const LIST = 'call --list [--json]';

/** Refusals that every operation may answer besides its own. */
const ALWAYS = ['BAD_INPUT', 'NOT_FOUND', 'INTERNAL'];

/** Everything a program needs to know about an operation, its forms as JSON Schema. */
function described() {
  return Object.values(operations).map(({ name, kind, summary, errors, input, output }) => ({
    name,
    kind,
    summary,
    errors: [...errors, ...ALWAYS],
    input: z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }),
    output: z.toJSONSchema(output, { unrepresentable: 'any' }),
  }));
}

function list(io: Io, json: boolean): number {
  const all = described();
  if (json) printJson(io, all);
  else {
    const rows = all.map(({ name, kind, errors, summary }) => [
      name,
      kind,
      summary,
      errors.filter((code) => !ALWAYS.includes(code)).join(' '),
    ]);
    io.out(table(['Operation', 'Kind', 'What it does', 'Refusals of its own'], rows));
    io.out('\nWith --json each comes with the JSON Schemas of its input and output.');
  }
  return 0;
}

async function readInput(io: Io): Promise<unknown> {
  const text = await io.stdin();
  if (text.trim() === '') return {};
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Failure({ code: 'BAD_INPUT', message: `The standard input is not JSON: ${why}` }, 2);
  }
}

export const call: Command = {
  name: 'call',
  summary: 'Carry out any operation by name, its input as JSON on the standard input (empty counts as {}).',
  forms: [FORM, LIST],
  options: [['--list', 'show every operation']],
  async run(args, io) {
    const { flags, words } = readArguments(
      args,
      FORM,
      { list: z.boolean().default(false) },
      { least: 0, most: 1 },
    );
    if (flags.list) return list(io, flags.json);
    const [name] = words;
    if (name === undefined) throw misuse('Name an operation, or see them all with call --list', FORM);
    if (!isOperationName(name)) {
      const message = `There is no operation called ${name}; edition-ledger call --list shows them all.`;
      throw new Failure({ code: 'UNKNOWN_OPERATION', message }, 2);
    }
    const input = await readInput(io);
    const access = operations[name].kind === 'query' ? 'read' : 'write';
    // The answer is JSON with or without --json, so the demo's caution goes to stderr.
    await withCatalogue({ ...flags, json: true }, io, access, async (catalogue) => {
      const answer = isReadingName(name)
        ? await catalogue.read(name, input as never)
        : catalogue.call(name, input as never);
      printJson(io, answer);
    });
    return 0;
  },
};
