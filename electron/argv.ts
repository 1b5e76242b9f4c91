import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

/** How a catalogue file's name ends; the system hands over files of this ending. */
export const CATALOGUE_ENDING = '.ledger';

/**
 * The catalogue a command line names, as a full path: after `--catalogue`, or as a bare name that ends in `.ledger`,
 * as the system passes a file that was double-clicked. Undefined when it names none. `folder` is where the
 * command line was written. Switches of Electron and Chromium are passed over.
 */
export function catalogueIn(argv: readonly string[], folder: string): string | undefined {
  const { values, positionals } = parseArgs({
    args: argv.slice(1),
    options: { catalogue: { type: 'string' } },
    strict: false,
    allowPositionals: true,
  });
  const named =
    typeof values.catalogue === 'string' && values.catalogue !== ''
      ? values.catalogue
      : positionals.findLast((word) => isCatalogueName(word));
  return named === undefined ? undefined : resolve(folder, named);
}

/** Whether a file name has the ending of catalogue files, in whatever case the system wrote it. */
export function isCatalogueName(name: string): boolean {
  return name.toLowerCase().endsWith(CATALOGUE_ENDING);
}
