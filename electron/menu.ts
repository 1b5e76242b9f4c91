import type { MenuItemConstructorOptions } from 'electron';
import { SCREENS } from './screens.ts';

/** What the menu's own items do; the rest are roles that the system knows. */
export interface MenuActions {
  newCatalogue(): void;
  openCatalogue(): void;
  openRecent(file: string): void;
  clearRecent(): void;
  showInFolder(): void;
  savePdf(): void;
  print(): void;
  go(path: string): void;
  showLog(): void;
}

export interface MenuState {
  platform: NodeJS.Platform;
  /** Developer tools are offered only in an unpacked program. */
  packaged: boolean;
  /** Full paths, newest first. */
  recent: readonly string[];
  actions: MenuActions;
}

type Item = MenuItemConstructorOptions;
const LINE: Item = { type: 'separator' };

/** An ampersand in a label would mark the next letter as an access key. */
function plain(label: string): string {
  return label.replaceAll('&', '&&');
}

function recentItem({ recent, actions }: MenuState): Item {
  const files = recent.map((file): Item => ({ label: plain(file), click: () => actions.openRecent(file) }));
  const clear: Item = { label: 'Clear the List', enabled: files.length > 0, click: actions.clearRecent };
  return { label: 'Open Recent', submenu: [...files, ...(files.length > 0 ? [LINE] : []), clear] };
}

function settingsItem({ actions }: MenuState): Item {
  return { label: 'Settings…', accelerator: 'CmdOrCtrl+,', click: () => actions.go('/settings') };
}

/** macOS keeps About, Settings and Quit under the program's own name. */
function programMenu(state: MenuState): Item {
  return {
    role: 'appMenu',
    submenu: [
      { role: 'about' },
      LINE,
      settingsItem(state),
      LINE,
      { role: 'services' },
      LINE,
      { role: 'hide' },
      { role: 'hideOthers' },
      { role: 'unhide' },
      LINE,
      { role: 'quit' },
    ],
  };
}

function fileMenu(state: MenuState): Item {
  const { actions } = state;
  const mac = state.platform === 'darwin';
  const folder = { darwin: 'Show in Finder', win32: 'Show in Explorer' }[state.platform as string];
  return {
    label: mac ? 'File' : '&File',
    submenu: [
      { label: 'New Catalogue…', accelerator: 'CmdOrCtrl+N', click: actions.newCatalogue },
      { label: 'Open…', accelerator: 'CmdOrCtrl+O', click: actions.openCatalogue },
      recentItem(state),
      LINE,
      { label: folder ?? 'Show in Folder', click: actions.showInFolder },
      LINE,
      { label: 'Save the Page as PDF…', accelerator: 'CmdOrCtrl+Shift+P', click: actions.savePdf },
      { label: 'Print…', accelerator: 'CmdOrCtrl+P', click: actions.print },
      LINE,
      ...(mac ? [] : [settingsItem(state), LINE]),
      { role: mac ? 'close' : 'quit' },
    ],
  };
}

function goMenu({ actions, platform }: MenuState): Item {
  const items = SCREENS.map(
    ({ name, path }, index): Item => ({
      label: name,
      ...(index < 9 ? { accelerator: `CmdOrCtrl+${index + 1}` } : {}),
      click: () => actions.go(path),
    }),
  );
  return { label: platform === 'darwin' ? 'Go' : '&Go', submenu: items };
}

function viewMenu({ packaged, platform }: MenuState): Item {
  const tools: Item[] = packaged ? [] : [LINE, { role: 'reload' }, { role: 'toggleDevTools' }];
  return {
    label: platform === 'darwin' ? 'View' : '&View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      LINE,
      { role: 'togglefullscreen' },
      ...tools,
    ],
  };
}

function helpMenu({ actions, platform }: MenuState): Item {
  const log: Item = { label: 'Show the Error Log', click: actions.showLog };
  const licences: Item = { label: 'Licences', click: () => actions.go('/settings') };
  const about: Item[] = platform === 'darwin' ? [] : [LINE, { role: 'about' }];
  return { role: 'help', submenu: [log, licences, ...about] };
}

/** The native menu, with the order, names and keys each system's users know. */
export function menuTemplate(state: MenuState): MenuItemConstructorOptions[] {
  return [
    ...(state.platform === 'darwin' ? [programMenu(state)] : []),
    fileMenu(state),
    { role: 'editMenu' },
    goMenu(state),
    viewMenu(state),
    { role: 'windowMenu' },
    helpMenu(state),
  ];
}
