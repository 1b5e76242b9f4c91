import type { Dialog, WebContents } from 'electron';

/** Notes a page's errors and crashes in the log, and offers to show the page anew after a crash. */
export function noteTroubles(contents: WebContents, dialog: Pick<Dialog, 'showMessageBox'>): void {
  contents.on('console-message', ({ level, message, lineNumber, sourceId }) => {
    if (level === 'error') console.error(`The page: ${message} (${sourceId}:${lineNumber})`);
  });
  contents.on('preload-error', (_event, _path, error) => console.error('The page’s door failed.', error));
  contents.on('unresponsive', () => console.error('The window does not answer.'));
  contents.on('render-process-gone', async (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit') return;
    console.error(`The window’s process ended: ${reason} (${exitCode}).`);
    const { response } = await dialog.showMessageBox({
      type: 'error',
      message: 'The window stopped working.',
      detail: 'What was saved is safe. The error log says more; it is in the Help menu.',
      buttons: ['Show it again', 'Leave it'],
      defaultId: 0,
    });
    if (response === 0 && !contents.isDestroyed()) contents.reload();
  });
}
