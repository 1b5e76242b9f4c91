import { join } from 'node:path';
import type { Session } from 'electron';
import { isOwnBlob } from './policy.ts';

/**
 * Lets a page save only files that it made itself: for those the system's own dialog asks where, beginning in
 * `folder`. A download from any other address is stopped before a byte of it is asked for.
 */
export function guardDownloads(session: Pick<Session, 'on'>, folder: string): void {
  session.on('will-download', (event, item) => {
    if (!isOwnBlob(item.getURL())) return event.preventDefault();
    item.setSaveDialogOptions({
      defaultPath: join(folder, item.getFilename()),
      properties: ['createDirectory', 'showOverwriteConfirmation'],
    });
    item.once('done', (_event, state) => {
      if (state === 'interrupted') console.error(`${item.getFilename()} was not saved whole.`);
    });
  });
}
