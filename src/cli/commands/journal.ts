import { z } from 'zod';
import type { JournalEntry } from '../../contract/journal.ts';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';

const FORM = 'journal [--work ID] [--count N]';

const number = (what: string, most: number) =>
  z
    .string()
    .refine((text) => /^[1-9]\d*$/.test(text) && Number(text) <= most, { error: what })
    .transform(Number)
    .optional();

/** 'title: "A" → "B"' for every column that differs. */
function changes({ before, after }: JournalEntry): string[] {
  const names = [...new Set([...Object.keys(before ?? {}), ...Object.keys(after ?? {})])];
  const shown = (value: unknown) => (value === undefined ? '(nothing)' : JSON.stringify(value));
  return names
    .filter((name) => shown(before?.[name]) !== shown(after?.[name]))
    .map((name) => `    ${name}: ${shown(before?.[name])} → ${shown(after?.[name])}`);
}

function lines(entry: JournalEntry): string[] {
  const about = entry.about === '' ? `${entry.entity} ${entry.rowKey}` : entry.about;
  const first = `${entry.seq}  ${entry.at}  ${entry.action} ${entry.entity}: ${about}  (${entry.operation})`;
  return entry.action === 'changed' ? [first, ...changes(entry)] : [first];
}

export const journal: Command = {
  name: 'journal',
  summary: 'The newest changes with what stood before and after.',
  forms: [FORM],
  options: [
    ['--work ID', 'changes of one work'],
    ['--count N', 'how many entries, 100 unless given, at most 1000'],
  ],
  async run(args, io) {
    const shape = {
      work: number('Write the work as its number, for example --work 3', Number.MAX_SAFE_INTEGER),
      count: number('Write the count as a number from 1 to 1000', 1000),
    };
    const { flags } = readArguments(args, FORM, shape, { least: 0, most: 0 });
    await withCatalogue(flags, io, 'read', ({ call }) => {
      const answer = call('journal.list', {
        ...(flags.work === undefined ? {} : { workId: flags.work }),
        ...(flags.count === undefined ? {} : { count: flags.count }),
      });
      if (flags.json) return printJson(io, answer);
      if (answer.entries.length === 0) return io.out('The journal has no such entry.');
      io.out(answer.entries.flatMap(lines).join('\n'));
      if (answer.more) io.out('There are more; --count N shows more of them.');
    });
    return 0;
  },
};
