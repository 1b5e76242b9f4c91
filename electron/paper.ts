import { rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import type { BrowserWindow, Dialog } from 'electron';

/** A4 with room for a hole punch; the pages' own print styles do the rest. */
const PAPER = { pageSize: 'A4', generateTaggedPDF: true, generateDocumentOutline: true } as const;

/** Opens the system's print dialog for what the window shows. */
export function printPage(window: BrowserWindow): void {
  window.webContents.print({ silent: false, printBackground: false }, (printed, why) => {
    if (!printed && why && !/cancel/i.test(why)) console.error('The page was not printed.', why);
  });
}

/**
 * Saves what the window shows as a PDF where the person says; answers the path, or undefined when they think
 * better of it. The file gets its name only when it is whole. Rejects with the disk's error.
 */
export async function savePdf(
  dialog: Pick<Dialog, 'showSaveDialog'>,
  window: BrowserWindow,
  folder: string,
): Promise<string | undefined> {
  const title =
    window
      .getTitle()
      .replaceAll(/[\\/:*?"<>|]/g, ' ')
      .trim() || 'Edition Ledger';
  const { filePath } = await dialog.showSaveDialog(window, {
    title: 'Save the Page as PDF',
    defaultPath: join(folder, `${title}.pdf`),
    filters: [{ name: 'PDF', extensions: ['pdf'] }],
    properties: ['createDirectory', 'showOverwriteConfirmation'],
  });
  if (!filePath) return undefined;
  const file = extname(filePath).toLowerCase() === '.pdf' ? filePath : `${filePath}.pdf`;
  const half = join(dirname(file), `.${basename(file)}.part`);
  try {
    await writeFile(half, await window.webContents.printToPDF(PAPER));
    await rename(half, file);
  } finally {
    await rm(half, { force: true });
  }
  return file;
}
