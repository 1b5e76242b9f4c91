import { MERGE_SIDES } from '../../contract/changes.ts';
import { type Catalogue, printJson } from '../catalogue.ts';
import type { Io } from '../io.ts';
import type { ImportFlags } from './import-flags.ts';

const SIDES = { here: 'this list holds', there: 'the copy holds' };

/** Merges what was done in a copy of this list; conflicts are listed, and a side for all of them is named by --keep. */
export function importChanges(catalogue: Catalogue, file: string, flags: ImportFlags, io: Io): number {
  const { keep, 'dry-run': dryRun } = flags;
  const terms = { file, ...(keep === undefined ? {} : { otherwise: keep }) };
  const tried = catalogue.call('changes.merge', { ...terms, dryRun: true });
  const open = tried.conflicts.filter(({ chosen }) => chosen === null);
  if (!flags.json)
    for (const { sentence, before, here, there, field, chosen } of tried.conflicts) {
      io.err(chosen === null ? sentence : `${sentence} (${SIDES[chosen]})`);
      if (field !== null)
        io.err(`  was: ${before ?? '–'}   here: ${here ?? '–'}   in the copy: ${there ?? '–'}`);
    }
  const goOn = !dryRun && open.length === 0;
  const merged = goOn ? catalogue.call('changes.merge', terms) : tried;
  if (flags.json) printJson(io, merged);
  else {
    const counts = `${merged.taken} changes, ${merged.known} known already, ${merged.left} left out`;
    io.out(`${goOn ? 'Taken over' : 'Would be taken over'}: ${counts}.`);
    if (open.length > 0)
      io.err(
        `${open.length} to decide; nothing was recorded. Say which side holds with ${MERGE_SIDES.map((side) => `--keep ${side}`).join(' or ')}, or choose one by one in the window.`,
      );
  }
  return open.length > 0 ? 1 : 0;
}
