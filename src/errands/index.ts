import type { ErrandName } from '../contract/index.ts';
import { backupErrands } from './backups.ts';
import type { ErrandHandler } from './context.ts';
import { fileErrands } from './files.ts';
import { programErrands } from './program.ts';

/** Every errand by its name. */
export const errands: { [N in ErrandName]: ErrandHandler<N> } = {
  ...backupErrands,
  ...fileErrands,
  ...programErrands,
};
