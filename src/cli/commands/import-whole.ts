import { type Catalogue, printJson } from '../catalogue.ts';
import type { Io } from '../io.ts';
import type { ImportFlags } from './import-flags.ts';

/** Takes a whole catalogue over into an empty one. */
export function importWhole(catalogue: Catalogue, file: string, flags: ImportFlags, io: Io): number {
  const dryRun = flags['dry-run'];
  const taken = catalogue.call('catalogue.import', { file, dryRun });
  if (flags.json) printJson(io, taken);
  else {
    const rows = taken.tables.reduce((sum, table) => sum + table.rows, 0);
    io.out(
      `${dryRun ? 'Would be taken over' : 'Taken over'}: ${taken.works} works, ${taken.formats} formats, ${taken.numbers} numbers; ${rows} rows in ${taken.tables.length} tables.`,
    );
  }
  return 0;
}
