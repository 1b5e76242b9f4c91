import { z } from 'zod';
import { MERGE_SIDES } from '../../contract/changes.ts';
import type { Common } from '../command.ts';

/** Options of every kind of import; each kind uses those that concern it. */
export const IMPORT_SHAPE = {
  as: z.string().optional(),
  'dry-run': z.boolean().default(false),
  'good-rows-only': z.boolean().default(false),
  refused: z.string().optional(),
  sheet: z.string().optional(),
  channel: z.string().optional(),
  on: z.string().optional(),
  partial: z.boolean().default(false),
  columns: z.string().optional(),
  dates: z.enum(['dmy', 'mdy'], { error: 'Write --dates dmy or --dates mdy' }).optional(),
  keep: z.enum(MERGE_SIDES, { error: 'Write --keep here or --keep there' }).optional(),
  decimals: z.enum(['point', 'comma'], { error: 'Write --decimals point or --decimals comma' }).optional(),
};
export type ImportFlags = Common & z.output<z.ZodObject<typeof IMPORT_SHAPE>>;
