import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';

export const demo: Command = {
  name: 'demo',
  summary: 'Fill an empty catalogue with the demo press.',
  forms: ['demo'],
  options: [],
  async run(args, io) {
    const { flags } = readArguments(args, 'demo', {}, { least: 0, most: 0 });
    await withCatalogue(flags, io, 'write', ({ call }) => {
      const made = call('catalogue.demo', {});
      if (flags.json) return printJson(io, made);
      io.out(`${flags.catalogue} now holds the demo press: ${made.works} works in ${made.formats} formats.`);
    });
    return 0;
  },
};
