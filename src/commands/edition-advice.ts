import type { EditionAdvice, StatedChanges } from '../contract/edition-advice.ts';
import { editionAdvice } from '../records/edition-advice.ts';
import { insertAdvice } from '../store/edition-advice.ts';
import type { CommandContext, Commands } from './context.ts';

/** Keeps advice with an edition as of today; answers the id of what is kept. */
export function keepAdvice(
  { db, today }: CommandContext,
  editionId: number,
  advice: EditionAdvice,
  note: string,
): number {
  const lines = advice.formats.flatMap((format) =>
    format.lines.map(({ change, detail, told, verdict, rule, source }) => ({
      formatName: format.name,
      change,
      detail,
      told,
      verdict,
      rule,
      source,
    })),
  );
  return insertAdvice(db, editionId, { madeOn: today, verdict: advice.overall, note, lines });
}

/** The advice on what was stated of a change, kept with the edition it led to. */
export function keepReasons(context: CommandContext, from: number, to: number, stated: StatedChanges): void {
  keepAdvice(context, to, editionAdvice(context.db, from, stated), stated.note);
}

export const editionAdviceCommands = {
  'editions.noteAdvice': (context, { editionId, stated }) => ({
    adviceId: keepAdvice(context, editionId, editionAdvice(context.db, editionId, stated), stated.note),
  }),
} satisfies Commands<'editions.noteAdvice'>;
