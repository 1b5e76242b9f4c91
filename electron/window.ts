import type { BrowserWindow, BrowserWindowConstructorOptions, Screen } from 'electron';
import { START_PAGE } from './policy.ts';
import { placeOnScreens, readWindowState, writeWindowState } from './window-state.ts';

/** Options of the one window. Isolation and sandbox are Electron's defaults; they are spelled out so that a test can hold them. */
export function windowOptions(preload: string): BrowserWindowConstructorOptions {
  return {
    width: 1280,
    height: 860,
    minWidth: 400,
    minHeight: 300,
    show: false,
    title: 'Edition Ledger',
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      webSecurity: true,
      spellcheck: false,
    },
  };
}

/** Opens the window where it last stood and shows the start page. */
export function openWindow(
  Window: new (options: BrowserWindowConstructorOptions) => BrowserWindow,
  screen: Pick<Screen, 'getAllDisplays'>,
  preload: string,
  stateFile: string,
): BrowserWindow {
  const state = readWindowState(stateFile);
  const screens = screen.getAllDisplays().map((display) => display.workArea);
  const window = new Window({ ...windowOptions(preload), ...placeOnScreens(state, screens) });
  if (state?.maximized) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () => {
    writeWindowState(stateFile, { ...window.getNormalBounds(), maximized: window.isMaximized() });
  });
  void window.loadURL(START_PAGE);
  return window;
}
