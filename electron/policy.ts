/** The pages' own address: a scheme of the program, so that no file:// and no network address is ever shown. */
export const SCHEME = 'app';
export const PAGE_HOST = 'edition-ledger';
export const START_PAGE = `${SCHEME}://${PAGE_HOST}/`;

/** The parts of a frame that say who is speaking. */
export interface Frame {
  url: string;
  parent: unknown;
}

/** Whether an address is one of the program's own pages. Parsed, never compared as text. */
export function isOwnPage(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, host, username, password } = new URL(address);
  return protocol === `${SCHEME}:` && host === PAGE_HOST && username === '' && password === '';
}

/** Whether a message may be heeded: it comes from an own page in a window's main frame that still exists. */
export function isTrustedSender(frame: Frame | null): boolean {
  return frame !== null && frame.parent === null && isOwnPage(frame.url);
}

/**
 * The two permissions a page has: putting text on the clipboard when a person presses a button, and telling of due
 * tasks when they asked for it in Settings.
 */
export function isPermitted(permission: string, requestingUrl: string): boolean {
  return (
    (permission === 'clipboard-sanitized-write' || permission === 'notifications') && isOwnPage(requestingUrl)
  );
}

/** Whether an address is a file that one of the program's own pages made in memory. */
export function isOwnBlob(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, pathname } = new URL(address);
  return protocol === 'blob:' && isOwnPage(pathname);
}

/** Whether an address is a mail to be written, which is handed to the system's own mail program and to nothing else. */
export function isMail(address: string): boolean {
  return URL.canParse(address) && new URL(address).protocol === 'mailto:';
}
