import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { Refusal } from '../contract/refusal.ts';
import { defaultCatalogue } from './home.ts';

export const START_USAGE = `Usage: npm start -- [--catalogue FILE] [--port NUMBER] [--idle MINUTES] [--no-open]

  --catalogue FILE   the catalogue file, made when missing; otherwise ${defaultCatalogue()}
  --port NUMBER      port of the loopback host; otherwise any free one
  --idle MINUTES     stop when no browser window has been open for so long; otherwise never
  --no-open          do not open the browser`;

const startOptions = z.object({
  catalogue: z
    .string()
    .min(1, { error: 'Name a file after --catalogue.' })
    .optional()
    .transform((file) => (file === undefined ? defaultCatalogue() : resolve(file))),
  port: z
    .string()
    .refine((text) => /^\d{1,5}$/.test(text) && Number(text) <= 65_535, {
      error: 'Write the port as a number from 0 to 65535, for example --port 8123.',
    })
    .transform(Number)
    .optional(),
  idle: z
    .string()
    .refine((text) => /^\d{1,4}$/.test(text) && Number(text) > 0, {
      error: 'Write the minutes as a number from 1 to 9999, for example --idle 30.',
    })
    .transform(Number)
    .optional(),
  'no-open': z.boolean().default(false),
  help: z.boolean().default(false),
});
export type StartOptions = z.infer<typeof startOptions>;

/** Reads the arguments of `npm start`. Throws BAD_INPUT with one sentence. */
export function readStartOptions(args: string[]): StartOptions {
  let values: unknown;
  try {
    ({ values } = parseArgs({
      args,
      options: {
        catalogue: { type: 'string' },
        port: { type: 'string' },
        idle: { type: 'string' },
        'no-open': { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    }));
  } catch (error) {
    const first = error instanceof Error ? error.message.split('. ')[0] : String(error);
    throw new Refusal('BAD_INPUT', `${first}; npm start -- --help shows the options.`);
  }
  const parsed = startOptions.safeParse(values);
  if (!parsed.success) {
    throw new Refusal('BAD_INPUT', parsed.error.issues[0]?.message ?? 'The options cannot be read.');
  }
  return parsed.data;
}
