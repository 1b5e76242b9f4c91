import { writeFileSync } from 'node:fs';
import { z } from 'zod';
import { isoDate } from '../../contract/operation.ts';
import { withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { misuse } from '../failure.ts';

const FORM =
  'report [--pdf FILE] [--html FILE] [--csv FILE] [--text FILE] [--as-of DATE] [--paper A4|Letter]';

export const report: Command = {
  name: 'report',
  summary: 'Write the audit to files: PDF, HTML that stands alone, CSV, plain text.',
  forms: [FORM],
  options: [
    ['--pdf FILE', 'as PDF'],
    ['--html FILE', 'as one HTML page'],
    ['--csv FILE', 'as CSV'],
    ['--text FILE', 'as plain text'],
    ['--as-of DATE', 'as it stood at the end of a past day'],
    ['--paper A4|Letter', 'A4 when left out'],
  ],
  async run(args, io) {
    const file = z.string().min(1).optional();
    const shape = {
      pdf: file,
      html: file,
      csv: file,
      text: file,
      'as-of': isoDate.optional(),
      paper: z.enum(['A4', 'Letter'], { error: 'Choose A4 or Letter as paper' }).default('A4'),
    };
    const { flags } = readArguments(args, FORM, shape, { least: 0, most: 0 });
    if (!flags.pdf && !flags.html && !flags.csv && !flags.text) throw misuse('Name a file to write', FORM);
    const day = flags['as-of'] === undefined ? {} : { asOf: flags['as-of'] };
    await withCatalogue(flags, io, 'read', ({ call }) => {
      const write = (path: string, bytes: string | Buffer) => {
        writeFileSync(path, bytes);
        io.out(`Written: ${path}`);
      };
      for (const as of ['pdf', 'html'] as const) {
        const path = flags[as];
        if (path !== undefined)
          write(path, Buffer.from(call('audit.report', { ...day, as, paper: flags.paper }).base64, 'base64'));
      }
      for (const as of ['csv', 'text'] as const) {
        const path = flags[as];
        if (path !== undefined) write(path, call('audit.text', { ...day, as }).text);
      }
    });
    return 0;
  },
};
