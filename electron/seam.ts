import type * as electron from 'electron';

/** The parts of Electron the shell uses: the one seam, so that tests can stand in for it. */
export type Seam = Pick<
  typeof electron,
  | 'app'
  | 'BrowserWindow'
  | 'crashReporter'
  | 'dialog'
  | 'ipcMain'
  | 'Menu'
  | 'protocol'
  | 'screen'
  | 'session'
  | 'shell'
  | 'utilityProcess'
>;

/** Where the shell's own files lie. */
export interface ShellFiles {
  preload: string;
  store: string;
  pages: string;
  /** A small picture that a dragged file is shown with. */
  icon: string;
}
