import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { BrowserWindow, Dialog } from 'electron';
import { CATALOGUE_ENDING, isCatalogueName } from './argv.ts';

const FILTERS = [{ name: 'Catalogues of Edition Ledger', extensions: [CATALOGUE_ENDING.slice(1)] }];

export type FileDialogs = Pick<Dialog, 'showOpenDialog' | 'showSaveDialog' | 'showMessageBox'>;

/** Asks for a catalogue to open; undefined when the person thinks better of it. `near` is the open one. */
export async function askForCatalogue(
  dialog: FileDialogs,
  window: BrowserWindow,
  near: string,
): Promise<string | undefined> {
  const { filePaths } = await dialog.showOpenDialog(window, {
    title: 'Open a Catalogue',
    defaultPath: dirname(near),
    filters: FILTERS,
    properties: ['openFile'],
  });
  return filePaths[0];
}

/**
 * Asks where a new catalogue shall be; undefined when the person thinks better of it. A file that is there already
 * is never replaced, whatever the system's own dialog asked: it can only be opened.
 */
export async function askForNewCatalogue(
  dialog: FileDialogs,
  window: BrowserWindow,
  near: string,
): Promise<string | undefined> {
  const { filePath } = await dialog.showSaveDialog(window, {
    title: 'New Catalogue',
    buttonLabel: 'Make',
    defaultPath: join(dirname(near), `New catalogue${CATALOGUE_ENDING}`),
    filters: FILTERS,
    properties: ['createDirectory'],
  });
  if (!filePath) return undefined;
  const file = isCatalogueName(filePath) ? filePath : `${filePath}${CATALOGUE_ENDING}`;
  if (!existsSync(file)) return file;
  const { response } = await dialog.showMessageBox(window, {
    type: 'question',
    message: `${basename(file)} is there already and is not replaced.`,
    detail: 'Open it as it is, or go back and choose another name.',
    buttons: ['Open it', 'Go back'],
    defaultId: 1,
    cancelId: 1,
  });
  return response === 0 ? file : undefined;
}
