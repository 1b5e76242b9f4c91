import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Path of Electron's program, or undefined when only its npm package is here: `path.txt` in the package folder
 * names the program below `dist`, or below ELECTRON_OVERRIDE_DIST_PATH.
 */
export function findElectron(
  packageFolder: string,
  env: Record<string, string | undefined> = process.env,
): string | undefined {
  const note = join(packageFolder, 'path.txt');
  const override = env.ELECTRON_OVERRIDE_DIST_PATH;
  const named = existsSync(note) ? readFileSync(note, 'utf8').trim() : undefined;
  if (named === undefined && !override) return undefined;
  const program = join(override || join(packageFolder, 'dist'), named || 'electron');
  return existsSync(program) ? program : undefined;
}
