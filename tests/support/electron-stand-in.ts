import { EventEmitter } from 'node:events';
import { vi } from 'vitest';
import type { Seam } from '../../electron/shell.ts';

/** Electron as the shell sees it: events to fire, calls to look at, in the order they were made. */
export function electronStandIn(userData: string, first = true) {
  const order: string[] = [];
  const note = (name: string) => vi.fn((..._args: unknown[]) => void order.push(name));
  const app = Object.assign(new EventEmitter(), {
    isPackaged: true,
    enableSandbox: note('enableSandbox'),
    requestSingleInstanceLock: () => first,
    whenReady: async () => void order.push('ready'),
    getPath: () => userData,
    quit: note('quit'),
    exit: note('exit'),
  });
  const child = Object.assign(new EventEmitter(), {
    postMessage: vi.fn((message: { kind: string }) => {
      if (message.kind === 'close') child.emit('message', { kind: 'closed' });
    }),
    kill: vi.fn(() => child.emit('exit', 0)),
  });
  const fork = vi.fn((_path: string, _args: string[]) => {
    order.push('fork');
    return child;
  });
  const windows: (EventEmitter & { webContents: { send: ReturnType<typeof vi.fn> }; loaded: string[] })[] =
    [];
  class Window extends EventEmitter {
    webContents = { send: vi.fn() };
    loaded: string[] = [];
    focus = vi.fn();
    show = vi.fn();
    maximize = vi.fn();
    restore = vi.fn();
    isMinimized = () => true;
    isMaximized = () => false;
    isDestroyed = () => false;
    getNormalBounds = () => ({ x: 1, y: 2, width: 900, height: 700 });
    loadURL = async (url: string) => void this.loaded.push(url);
    constructor() {
      super();
      order.push('window');
      windows.push(this);
    }
  }
  const seam = {
    app,
    BrowserWindow: Window,
    dialog: { showErrorBox: vi.fn() },
    ipcMain: { handle: note('calls') },
    Menu: { buildFromTemplate: vi.fn(), setApplicationMenu: vi.fn() },
    protocol: { registerSchemesAsPrivileged: note('scheme'), handle: note('pages') },
    shell: { openExternal: async () => {} },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    session: {
      defaultSession: {
        setPermissionRequestHandler: note('guard session'),
        setPermissionCheckHandler: vi.fn(),
        setDevicePermissionHandler: vi.fn(),
      },
    },
    utilityProcess: { fork },
  };
  return { seam: seam as unknown as Seam, parts: seam, app, child, fork, windows, order };
}
