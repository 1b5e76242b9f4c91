/** Folder names under which common file-synchronising programs keep what they copy to other machines. */
const SYNCED =
  /(^|[\\/])(dropbox|onedrive[^\\/]*|google drive|googledrive|icloud drive|mobile documents|nextcloud|owncloud|syncthing|pcloud[^\\/]*)([\\/]|$)/i;

/** A caution about where the file lies, or null. */
export function folderWarning(path: string): string | null {
  if (!SYNCED.test(path)) return null;
  return 'This catalogue lies in a folder that is copied to other machines while it is in use; a copy made in the middle of a change can be unusable. Keep the catalogue in a folder of its own, and keep backups in the copied one.';
}

/** A caution about the clock, or null. `last` is the moment of the newest journal entry. */
export function clockWarning(now: Date, last: string | undefined): string | null {
  if (last === undefined || now.getTime() >= Date.parse(last) - 60_000) return null;
  return `This computer's clock (${now.toISOString().slice(0, 16)}) stands before the newest change of this catalogue (${last.slice(0, 16)}); set the clock right, or dates you do not type will be wrong.`;
}
