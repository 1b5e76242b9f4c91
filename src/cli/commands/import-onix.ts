import type { OutputOf } from '../../contract/index.ts';
import { type Catalogue, printJson } from '../catalogue.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';
import type { ImportFlags } from './import-flags.ts';

type Preview = OutputOf<'onix.preview'>;

/** Rows printed one by one. */
const NAMED = 20;

function print(io: Io, preview: Preview): void {
  const { counts, products, version, sender } = preview;
  io.out(`ONIX ${version}${sender ? ` from ${sender}` : ''}: ${products} products.`);
  io.out(
    Object.entries(counts)
      .map(([state, count]) => `${count} ${state}`)
      .join(', '),
  );
  const told = preview.rows.filter((row) => row.state === 'refused' || row.state === 'conflicting');
  if (told.length === 0) return;
  const rows = told
    .slice(0, NAMED)
    .map((row) => [String(row.row), String(row.line), row.isbn, row.state, row.notes[0] ?? '']);
  io.err(table(['row', 'line', 'number', 'state', 'why'], rows));
  if (told.length > NAMED) io.err(`${told.length - NAMED} more.`);
}

/**
 * Takes an ONIX message over as it is proposed: works and editions are confirmed in the window. Rows in conflict or that
 * cannot be taken refuse the whole file, unless the good rows alone are asked for. Answers 1 where some were left out.
 */
export function importOnix(catalogue: Catalogue, file: string, flags: ImportFlags, io: Io): number {
  const preview = catalogue.call('onix.preview', { file });
  const left = (preview.counts.refused ?? 0) + (preview.counts.conflicting ?? 0);
  const blocked = left > 0 && !flags['good-rows-only'];
  const told = flags['dry-run'] || blocked ? null : catalogue.call('onix.import', { file });
  if (flags.json) printJson(io, { preview, taken: told });
  else {
    print(io, preview);
    if (told)
      io.out(
        `Recorded: ${told.worksAdded} works, ${told.editionsAdded} editions, ${told.formatsAdded} formats; ${told.formatsChanged} changed; ${told.kept} parts kept.`,
      );
    else if (blocked && !flags['dry-run'])
      io.err('Nothing was recorded; mend the file, or leave these rows out with --good-rows-only.');
  }
  return left > 0 ? 1 : 0;
}
