import { fileURLToPath } from 'node:url';
import {
  app,
  BrowserWindow,
  crashReporter,
  dialog,
  ipcMain,
  Menu,
  protocol,
  screen,
  session,
  shell,
  utilityProcess,
} from 'electron';
import { startShell } from './shell.ts';

// Paths are those of the built program: out/electron/main.js with its neighbours.
const beside = (path: string) => fileURLToPath(new URL(path, import.meta.url));

void startShell(
  {
    app,
    BrowserWindow,
    crashReporter,
    dialog,
    ipcMain,
    Menu,
    protocol,
    screen,
    session,
    shell,
    utilityProcess,
  },
  {
    preload: beside('./preload.cjs'),
    store: beside('./store.js'),
    pages: beside('../../dist/renderer'),
    icon: beside('../../resources/icons/64x64.png'),
  },
);
