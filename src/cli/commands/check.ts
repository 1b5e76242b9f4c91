import { printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';

export const check: Command = {
  name: 'check',
  summary:
    'Check the file itself: its pages, its references and the chain of its journal; ends with 1 on a flaw.',
  forms: ['check'],
  options: [],
  async run(args, io) {
    const { flags } = readArguments(args, 'check', {}, { least: 0, most: 0 });
    return withCatalogue(flags, io, 'read', ({ call }) => {
      const answer = call('catalogue.check', {});
      if (flags.json) printJson(io, answer);
      else {
        io.out(answer.sentences.join('\n'));
        io.out(`Journal head: ${answer.journal.head}`);
      }
      return answer.ok ? 0 : 1;
    });
  },
};
