import type { Session, WebContents } from 'electron';
import { isMail, isOwnPage, isPermitted } from './policy.ts';

/** The events of a page that could lead it elsewhere. */
export type GuardedContents = Pick<WebContents, 'on' | 'setWindowOpenHandler'>;
export type GuardedSession = Pick<
  Session,
  'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'
>;

/**
 * Keeps every page where it is: no navigation away, no redirect, no frame, no new window, no webview. A mailto:
 * link that a person pressed goes to the mail program by `writeMail`; the page itself stays.
 */
export function guardContents(contents: GuardedContents, writeMail: (address: string) => void): void {
  contents.on('will-frame-navigate', (details) => {
    if (details.isMainFrame && isMail(details.url)) writeMail(details.url);
    // Reloading the start page is the one navigation of the main frame; inside it, addresses live behind '#'.
    if (!details.isMainFrame || !isOwnPage(details.url)) details.preventDefault();
  });
  contents.on('will-redirect', (details) => details.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Refuses every permission and device but writing text to the clipboard. */
export function guardSession(session: GuardedSession): void {
  session.setPermissionRequestHandler((contents, permission, answer) => {
    answer(isPermitted(permission, contents.getURL()));
  });
  session.setPermissionCheckHandler((_contents, permission, origin) => isPermitted(permission, origin));
  session.setDevicePermissionHandler(() => false);
}
