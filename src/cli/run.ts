import packageFacts from '../../package.json' with { type: 'json' };
import { COMMON_OPTIONS, type Command } from './command.ts';
import { agenda } from './commands/agenda.ts';
import { audit } from './commands/audit.ts';
import { backup } from './commands/backup.ts';
import { block } from './commands/block.ts';
import { call } from './commands/call.ts';
import { check } from './commands/check.ts';
import { demo } from './commands/demo.ts';
import { exportFile } from './commands/export.ts';
import { importFile } from './commands/import.ts';
import { isbn } from './commands/isbn.ts';
import { journal } from './commands/journal.ts';
import { proof } from './commands/proof.ts';
import { report } from './commands/report.ts';
import { restore } from './commands/restore.ts';
import { status } from './commands/status.ts';
import { Failure } from './failure.ts';
import type { Io } from './io.ts';

const COMMANDS: readonly Command[] = [
  status,
  audit,
  report,
  agenda,
  block,
  isbn,
  journal,
  check,
  proof,
  backup,
  restore,
  exportFile,
  importFile,
  demo,
  call,
];

function optionLines(options: Command['options']): string[] {
  const width = Math.max(...options.map(([written]) => written.length));
  return options.map(([written, meaning]) => `  ${written.padEnd(width)}  ${meaning}`);
}

function helpOf(command: Command): string {
  const forms = command.forms.map((form) => `  edition-ledger ${form}`);
  return [command.summary, '', ...forms, '', ...optionLines([...command.options, ...COMMON_OPTIONS])].join(
    '\n',
  );
}

function help(): string {
  const width = Math.max(...COMMANDS.map(({ name }) => name.length));
  return [
    'Edition Ledger keeps a press’s ISBNs, editions, formats and channels. npm start opens its window.',
    '',
    'Usage: edition-ledger COMMAND [OPTIONS]',
    '',
    ...COMMANDS.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`),
    '',
    ...optionLines(COMMON_OPTIONS),
    '',
    'Ends with 0 when all is well, 1 when the catalogue refuses or a check finds something, 2 when the command is',
    'written wrongly or cannot run.',
  ].join('\n');
}

async function carryOut([name, ...args]: string[], io: Io): Promise<number> {
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    const known = COMMANDS.find((command) => name === 'help' && command.name === args[0]);
    io.out(known ? helpOf(known) : help());
    return 0;
  }
  if (name === '--version') {
    io.out(packageFacts.version);
    return 0;
  }
  const command = COMMANDS.find((candidate) => candidate.name === name);
  if (command === undefined) {
    const message = `There is no command '${name}'; edition-ledger --help shows them all.`;
    throw new Failure({ code: 'BAD_INPUT', message }, 2);
  }
  const ownWords = args.includes('--') ? args.slice(0, args.indexOf('--')) : args;
  if (ownWords.includes('--help') || ownWords.includes('-h')) {
    io.out(helpOf(command));
    return 0;
  }
  return command.run(args, io);
}

/** Runs one command line and gives its exit code; failures are one sentence on stderr, or an object with `--json`. */
export async function run(argv: string[], io: Io): Promise<number> {
  try {
    return await carryOut(argv, io);
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    io.err(argv.includes('--json') ? JSON.stringify(error.body) : error.message);
    return error.exitCode;
  }
}
