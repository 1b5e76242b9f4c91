import { config, type z } from 'zod';

// The pages' content policy forbids code that is made at run time, which zod would otherwise try.
config({ jitless: true });

/** The sentence to show at each field of an input; empty when the input is sound. */
export type FieldErrors = Readonly<Record<string, string>>;

/** What the contract finds wrong with an input before it is sent: the first sentence for each field. */
export function checkInput(schema: z.ZodType, input: unknown): FieldErrors {
  const parsed = schema.safeParse(input);
  if (parsed.success) return {};
  const errors: Record<string, string> = {};
  for (const issue of parsed.error.issues) {
    const field = String(issue.path[0] ?? '');
    errors[field] ??= issue.message;
  }
  return errors;
}
