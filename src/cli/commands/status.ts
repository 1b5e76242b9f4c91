import { isoDate } from '../../contract/operation.ts';
import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { counts, table } from '../table.ts';

const FORM = 'status [--as-of DATE]';

export const status: Command = {
  name: 'status',
  summary: 'Which formats are live, retiring, retired and planned, and how many numbers are left.',
  forms: [FORM],
  options: [['--as-of DATE', 'as it stood at the end of a past day']],
  async run(args, io) {
    const { flags } = readArguments(args, FORM, { 'as-of': isoDate.optional() }, { least: 0, most: 0 });
    await withCatalogue(flags, io, 'read', ({ call }) => {
      const asOf = flags['as-of'];
      const answer = call('catalogue.status', asOf === undefined ? {} : { asOf });
      if (flags.json) return printJson(io, answer);
      const tasks = `open ${answer.openTasks}, overdue ${answer.overdueTasks}`;
      const { name, warnings } = call('catalogue.info', {});
      for (const warning of warnings) io.err(warning);
      io.out(`${name} on ${answer.asOf}`);
      io.out(`Works    ${answer.works}`);
      io.out(`Formats  ${counts(answer.formats)}`);
      io.out(`Numbers  ${counts(answer.numbers)}`);
      io.out(`Tasks    ${tasks}${asOf === undefined ? '' : ' (as they are now)'}`);
      const rows = answer.list.map((row) => [row.standing, row.hyphenated ?? '', row.editionLabel, row.name]);
      if (rows.length > 0) io.out(`\n${table(['Standing', 'ISBN', 'Edition', 'Format'], rows)}`);
    });
    return 0;
  },
};
