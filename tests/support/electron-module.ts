import { type ChildProcess, fork } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import vm from 'node:vm';
import type { Bridge } from '../../electron/bridge.ts';

/**
 * Stands in for the module `electron` when the built shell runs under Node: real child processes for the utility
 * process, structured clones between shell and page, the page's files through the shell's own protocol, and the
 * preload run as one CommonJS script. What the page does is `story`, in a file named by STORY.
 */
type Handler = (event: object, ...given: unknown[]) => Promise<unknown>;
type PageHandler = (request: Request) => Promise<Response>;

/** What a story gets: the page's door, and the page's files as the window would load them. */
export interface Page {
  bridge: Bridge;
  load(
    address: string,
  ): Promise<{ status: number; type: string; policy: string; bytes: number; text: string }>;
  menu(): { label?: string; role?: string; submenu?: unknown }[];
}
export type Story = (page: Page) => Promise<object>;

const userData = process.env.USER_DATA ?? '';
const handlers = new Map<string, Handler>();
let pages: PageHandler | undefined;
let menu: ReturnType<Page['menu']> = [];

class App extends EventEmitter {
  isPackaged = true;
  #quitting = false;
  getVersion = () => '0.0.0';
  getPath = () => userData;
  enableSandbox = () => {};
  requestSingleInstanceLock = () => true;
  setAppUserModelId = () => {};
  addRecentDocument = () => {};
  clearRecentDocuments = () => {};
  whenReady = () => new Promise<void>((resolve) => setTimeout(resolve, 10));
  exit = (code = 0) => process.exit(code);
  quit = () => {
    let prevented = false;
    this.emit('will-quit', { preventDefault: () => (prevented = true) });
    if (!prevented && !this.#quitting) process.exit(0);
  };
}
export const app = new App();

/** Electron's utility process over Node's own child process: the same messages on another port. */
const SHIM = `process.parentPort = {
  postMessage: (message) => process.send(message),
  on: (_event, listener) => process.on('message', (data) => listener({ data })),
};`;

export const utilityProcess = {
  fork: (path: string, args: string[]) => {
    const child: ChildProcess = fork(path, args, {
      execArgv: ['--import', `data:text/javascript,${encodeURIComponent(SHIM)}`],
      serialization: 'advanced',
      stdio: ['ignore', 'inherit', 'pipe', 'ipc'],
    });
    return {
      postMessage: (message: object) => void child.send(message),
      on: child.on.bind(child),
      kill: () => child.kill(),
      stderr: child.stderr,
    };
  },
};

export const ipcMain = { handle: (channel: string, handler: Handler) => void handlers.set(channel, handler) };
export const protocol = {
  registerSchemesAsPrivileged: () => {},
  handle: (_scheme: string, handler: PageHandler) => {
    pages = handler;
  },
};
export const session = {
  defaultSession: Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: () => {},
    setPermissionCheckHandler: () => {},
    setDevicePermissionHandler: () => {},
  }),
};
export const Menu = {
  buildFromTemplate: (template: typeof menu) => template,
  setApplicationMenu: (template: typeof menu) => {
    menu = template;
  },
};
export const dialog = { showErrorBox: (title: string, words: string) => console.error(`${title}: ${words}`) };
export const crashReporter = { start: () => {} };
export const shell = {};
export const screen = { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] };

export class BrowserWindow extends EventEmitter {
  readonly #preload: string;
  readonly #page = new EventEmitter();
  readonly webContents = {
    send: (channel: string, data: unknown) => this.#page.emit(channel, {}, structuredClone(data)),
  };
  constructor(options: { webPreferences: { preload: string } }) {
    super();
    this.#preload = options.webPreferences.preload;
  }
  show(): void {}
  focus(): void {}
  isMinimized = () => false;
  isMaximized = () => false;
  isDestroyed = () => false;
  getNormalBounds = () => ({ x: 0, y: 0, width: 900, height: 700 });

  /** Runs the preload as the sandbox would, and then the story in place of the page. */
  async loadURL(address: string): Promise<void> {
    let bridge: Bridge | undefined;
    const ipcRenderer = {
      invoke: async (channel: string, ...given: unknown[]) => {
        const event = { senderFrame: { url: address, parent: null }, sender: this.webContents };
        return structuredClone(await handlers.get(channel)?.(event, ...structuredClone(given)));
      },
      on: this.#page.on.bind(this.#page),
      removeListener: this.#page.removeListener.bind(this.#page),
    };
    const electron = {
      contextBridge: { exposeInMainWorld: (_name: string, made: Bridge) => (bridge = made) },
      ipcRenderer,
      webUtils: { getPathForFile: (file: File) => file.name },
    };
    const require = (name: string) => {
      if (name !== 'electron') throw new Error(`A sandboxed preload cannot require ${name}.`);
      return electron;
    };
    vm.runInNewContext(readFileSync(this.#preload, 'utf8'), { require, module: {}, exports: {} });
    if (!bridge) throw new Error('The preload offers the page nothing.');
    const { default: story } = (await import(process.env.STORY ?? '')) as { default: Story };
    const told = await story({ bridge, load: (path) => load(new URL(path, address).href), menu: () => menu });
    console.log(JSON.stringify(told));
    this.emit('close');
    app.quit();
  }
}

async function load(address: string) {
  const reply = (await pages?.(new Request(address))) ?? Response.error();
  const body = new Uint8Array(await reply.arrayBuffer());
  return {
    status: reply.status,
    type: reply.headers.get('content-type') ?? '',
    policy: reply.headers.get('content-security-policy') ?? '',
    bytes: body.byteLength,
    text: new TextDecoder().decode(body),
  };
}

/** The argument for Node that puts this module in the place of `electron`. */
export const AS_ELECTRON = [
  '--import',
  `data:text/javascript,${encodeURIComponent(`
    import { registerHooks } from 'node:module';
    registerHooks({ resolve: (name, context, next) =>
      name === 'electron'
        ? { url: ${JSON.stringify(import.meta.url)}, shortCircuit: true }
        : next(name, context) });`)}`,
];

/** Path of this file's folder, for stories beside it. */
export const STORIES = join(import.meta.dirname, 'stories');
