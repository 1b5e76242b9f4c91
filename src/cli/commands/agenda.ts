import { z } from 'zod';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { table } from '../table.ts';

const FORM = 'agenda [--ics] [--events]';

export const agenda: Command = {
  name: 'agenda',
  summary: 'What is to be done, by day; as a calendar file with --ics.',
  forms: [FORM],
  options: [
    ['--ics', 'as a calendar file (iCalendar), tasks as to-dos'],
    ['--events', 'with --ics: tasks as all-day events, for calendars that show no to-dos'],
  ],
  async run(args, io) {
    const shape = { ics: z.boolean().default(false), events: z.boolean().default(false) };
    const { flags } = readArguments(args, FORM, shape, { least: 0, most: 0 });
    if (flags.ics) {
      // A calendar file carries nothing but the calendar, so what else is said goes to stderr.
      const quiet = { ...io, out: io.err };
      const as = flags.events ? 'events' : 'tasks';
      const { text } = await withCatalogue(
        flags,
        quiet,
        'read',
        ({ call }) => call('tasks.calendar', { as }),
        2,
      );
      io.out(text.replace(/\r\n$/, ''));
      return 0;
    }
    await withCatalogue(
      flags,
      io,
      'read',
      ({ call }) => {
        const answer = call('tasks.list', {});
        if (flags.json) printJson(io, answer);
        else if (answer.tasks.length === 0) io.out('Nothing to do.');
        else
          io.out(
            table(
              ['Due', 'Task', 'Waiting for'],
              answer.tasks.map((task) => [
                task.overdue ? `${task.dueOn} late` : task.dueOn,
                task.title,
                task.waitingFor,
              ]),
            ),
          );
      },
      2,
    );
    return 0;
  },
};
