import { homedir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Top folder of the program's own files. */
export const PROGRAM = fileURLToPath(new URL('../../', import.meta.url));

/** Folder of the built pages. */
export const PAGES = join(PROGRAM, 'dist/renderer');

/** What the default place depends on; replaceable in tests. */
export interface Surroundings {
  platform: NodeJS.Platform;
  env: Record<string, string | undefined>;
  home: string;
}

/**
 * Folder for the user's data when no `--catalogue` is given: on Linux and the like $XDG_DATA_HOME or
 * ~/.local/share (XDG Base Directory specification), on macOS ~/Library/Application Support, on Windows
 * %LOCALAPPDATA%, each with `edition-ledger` below it.
 */
export function dataFolder(
  { platform, env, home }: Surroundings = { platform: process.platform, env: process.env, home: homedir() },
): string {
  const name = 'edition-ledger';
  if (platform === 'win32') return join(env.LOCALAPPDATA || join(home, 'AppData', 'Local'), name);
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', name);
  // The specification has relative paths ignored.
  const given = env.XDG_DATA_HOME?.startsWith('/') ? env.XDG_DATA_HOME : undefined;
  return join(given ?? join(home, '.local', 'share'), name);
}

/** The catalogue file used when none is named; the same for the window, the host and the command line. */
export function defaultCatalogue(): string {
  return join(dataFolder(), 'catalogue.ledger');
}
