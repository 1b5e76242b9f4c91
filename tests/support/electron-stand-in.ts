import { EventEmitter } from 'node:events';
import type { MenuItemConstructorOptions } from 'electron';
import { vi } from 'vitest';
import { makeBridge } from '../../electron/bridge.ts';
import { START_PAGE } from '../../electron/policy.ts';
import type { Seam } from '../../electron/seam.ts';

type Handler = (event: object, ...given: unknown[]) => Promise<unknown>;

/** A store process that opens at once and closes when told; `stderr` can be spoken through. */
export function storeStandIn() {
  const child = Object.assign(new EventEmitter(), {
    stderr: new EventEmitter(),
    postMessage: vi.fn((message: { kind: string }) => {
      if (message.kind === 'close') child.emit('message', { kind: 'closed' });
    }),
    kill: vi.fn(() => child.emit('exit', 0)),
  });
  return child;
}

/** A window of the stand-in: what it was told, and its page as the other end of the wire. */
class WindowStandIn extends EventEmitter {
  readonly loaded: string[] = [];
  readonly page = new EventEmitter();
  readonly webContents = {
    // What crosses is cloned, as between Electron's processes: a function or a class would not arrive.
    send: vi.fn((channel: string, data: unknown) => void this.page.emit(channel, {}, structuredClone(data))),
    print: vi.fn(),
    printToPDF: vi.fn(async () => Buffer.from('%PDF-1.7')),
    startDrag: vi.fn(),
  };
  focus = vi.fn();
  show = vi.fn();
  maximize = vi.fn();
  restore = vi.fn();
  setRepresentedFilename = vi.fn();
  isMinimized = () => true;
  isMaximized = () => false;
  isDestroyed = () => false;
  getTitle = () => 'Edition Ledger';
  getNormalBounds = () => ({ x: 1, y: 2, width: 900, height: 700 });
  loadURL = async (url: string) => void this.loaded.push(url);
}

/**
 * Electron as the shell sees it: events to fire, calls to look at, in the order they were made. `fork` starts the
 * store process; the page's bridge is joined to the shell's handlers by structured clones.
 */
export function electronStandIn(
  userData: string,
  {
    first = true,
    fork = vi.fn((_path: string, _args: string[], _options?: object): object => storeStandIn()),
  } = {},
) {
  const order: string[] = [];
  const note = (name: string) => vi.fn((..._args: unknown[]) => void order.push(name));
  const app = Object.assign(new EventEmitter(), {
    isPackaged: true,
    getVersion: () => '0.0.0',
    enableSandbox: note('enableSandbox'),
    requestSingleInstanceLock: () => first,
    setAppUserModelId: vi.fn(),
    whenReady: async () => void order.push('ready'),
    getPath: () => userData,
    addRecentDocument: vi.fn(),
    clearRecentDocuments: vi.fn(),
    quit: note('quit'),
    exit: note('exit'),
  });
  const windows: WindowStandIn[] = [];
  class Window extends WindowStandIn {
    constructor() {
      super();
      order.push('window');
      windows.push(this);
    }
  }
  const handlers = new Map<string, Handler>();
  const menus: MenuItemConstructorOptions[][] = [];
  const sessionEvents = new EventEmitter();
  const seam = {
    app,
    BrowserWindow: Window,
    crashReporter: { start: vi.fn() },
    dialog: {
      showErrorBox: vi.fn(),
      showMessageBox: vi.fn(async () => ({ response: 0 })),
      showOpenDialog: vi.fn(async () => ({ filePaths: [] as string[] })),
      showSaveDialog: vi.fn(async () => ({ filePath: '' })),
    },
    ipcMain: { handle: (channel: string, handler: Handler) => void handlers.set(channel, handler) },
    Menu: {
      buildFromTemplate: (template: MenuItemConstructorOptions[]) => template,
      setApplicationMenu: (menu: MenuItemConstructorOptions[]) => void menus.push(menu),
    },
    protocol: { registerSchemesAsPrivileged: note('scheme'), handle: note('pages') },
    shell: { openExternal: vi.fn(async () => {}), showItemInFolder: vi.fn() },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    session: {
      defaultSession: {
        on: sessionEvents.on.bind(sessionEvents),
        setPermissionRequestHandler: note('guard session'),
        setPermissionCheckHandler: vi.fn(),
        setDevicePermissionHandler: vi.fn(),
      },
    },
    utilityProcess: {
      fork: (path: string, args: string[], options?: object) => {
        order.push('fork');
        return fork(path, args, options);
      },
    },
  };
  /** The page's bridge of a window, over the same wire as in the program. */
  const bridgeOf = (window: WindowStandIn) =>
    makeBridge(
      {
        invoke: async (channel: string, ...given: unknown[]) => {
          const handler = handlers.get(channel);
          if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
          const event = { senderFrame: { url: START_PAGE, parent: null }, sender: window.webContents };
          return structuredClone(await handler(event, ...structuredClone(given)));
        },
        on: window.page.on.bind(window.page),
        removeListener: window.page.removeListener.bind(window.page),
      } as unknown as Parameters<typeof makeBridge>[0],
      { getPathForFile: (file: File) => file.name },
    );
  /** Presses the item of this label in the menu as it stands. */
  const press = (label: string) => {
    const find = (items: MenuItemConstructorOptions[]): MenuItemConstructorOptions | undefined => {
      for (const item of items) {
        if (item.label === label) return item;
        const below = Array.isArray(item.submenu) ? find(item.submenu) : undefined;
        if (below) return below;
      }
      return undefined;
    };
    const click = find(menus.at(-1) ?? [])?.click as (() => void) | undefined;
    if (click === undefined) throw new Error(`There is no menu item '${label}'.`);
    click();
  };
  return {
    seam: seam as unknown as Seam,
    parts: seam,
    app,
    windows,
    order,
    handlers,
    menus,
    sessionEvents,
    bridgeOf,
    press,
  };
}
