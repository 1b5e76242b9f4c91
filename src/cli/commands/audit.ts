import { z } from 'zod';
import { isoDate } from '../../contract/operation.ts';
import { DEMO_CAUTION, printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';

const FORM = 'audit [--as-of DATE] [--csv]';

export const audit: Command = {
  name: 'audit',
  summary: 'Check the catalogue by the rules; ends with 0 when nothing must be fixed, else with 1.',
  forms: [FORM],
  options: [
    ['--as-of DATE', 'as it stood at the end of a past day'],
    ['--csv', 'the report as CSV'],
  ],
  async run(args, io) {
    const shape = { 'as-of': isoDate.optional(), csv: z.boolean().default(false) };
    const { flags } = readArguments(args, FORM, shape, { least: 0, most: 0 });
    const day = flags['as-of'] === undefined ? {} : { asOf: flags['as-of'] };
    // The report carries the demo's caution itself, so here it is not printed a second time.
    const quiet = { ...io, out: (text: string) => (text === DEMO_CAUTION ? undefined : io.out(text)) };
    const findings = await withCatalogue(
      flags,
      quiet,
      'read',
      ({ call }) => {
        const answer = call('audit.run', day);
        if (flags.json) printJson(io, answer);
        else io.out(call('audit.text', { ...day, as: flags.csv ? 'csv' : 'text' }).text.trimEnd());
        return answer.findings;
      },
      2,
    );
    return findings.some((finding) => finding.severity === 'must fix') ? 1 : 0;
  },
};
