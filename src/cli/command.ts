import { parseArgs } from 'node:util';
import { z } from 'zod';
import { defaultCatalogue } from '../host/home.ts';
import { misuse } from './failure.ts';
import type { Io } from './io.ts';

/** One command of the shell. */
export interface Command {
  name: string;
  summary: string;
  /** How it is written, without the program's name; the first is shown when it is written wrongly. */
  forms: readonly string[];
  /** Options of its own: how each is written and what it means. */
  options: readonly (readonly [string, string])[];
  /** Answers with the exit code; throws `Failure`. */
  run(args: string[], io: Io): Promise<number>;
}

/** Options every command takes. */
const common = z.object({
  catalogue: z
    .string()
    .min(1, { error: 'Name a file after --catalogue' })
    .optional()
    .transform((file) => file ?? defaultCatalogue()),
  json: z.boolean().default(false),
});
export type Common = z.infer<typeof common>;

export const COMMON_OPTIONS = [
  ['--catalogue FILE', 'the catalogue file; otherwise the one that npm start opens'],
  ['--json', 'answer in JSON; failures too, as {code, message, field}'],
  ['--help', 'show the forms of a command'],
] as const;

type Flags = Record<string, 'string' | 'boolean'>;

/** Which flags a schema takes: booleans stand alone, everything else has a value. */
function flagsOf(shape: z.ZodRawShape): Flags {
  return Object.fromEntries(
    Object.entries(shape).map(([name, field]) => {
      const value = z.safeParse(field as z.ZodType, true).success;
      return [name, value ? 'boolean' : 'string'];
    }),
  );
}

/**
 * Reads the arguments of one form: flags by the schema, `words` free-standing words at least and at most.
 * Throws a `Failure` with the form when they do not fit.
 */
export function readArguments<S extends z.ZodRawShape>(
  args: string[],
  form: string,
  shape: S,
  words: { least: number; most: number },
): { flags: Common & z.output<z.ZodObject<S>>; words: string[] } {
  const schema = common.extend(shape);
  let parsed: { values: unknown; positionals: string[] };
  try {
    const options = Object.fromEntries(
      Object.entries(flagsOf(schema.shape)).map(([name, type]) => [name, { type }]),
    );
    parsed = parseArgs({ args, options, allowPositionals: true });
  } catch (error) {
    const [first = ''] = error instanceof Error ? error.message.split('. ') : [];
    throw misuse(first.split('\n')[0] ?? '', form);
  }
  const { positionals } = parsed;
  if (positionals.length < words.least) throw misuse('Something is missing', form);
  const extra = positionals[words.most];
  if (extra !== undefined) throw misuse(`'${extra}' is one word too many`, form);
  const flags = schema.safeParse(parsed.values);
  if (!flags.success) throw misuse(flags.error.issues[0]?.message ?? 'An option cannot be read', form);
  return { flags: flags.data as Common & z.output<z.ZodObject<S>>, words: positionals };
}
