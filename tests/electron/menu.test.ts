import type { MenuItemConstructorOptions } from 'electron';
import { describe, expect, test, vi } from 'vitest';
import { type MenuActions, menuTemplate } from '../../electron/menu.ts';
import { SCREENS } from '../../electron/screens.ts';
import { SCREENS as PAGE_SCREENS } from '../../renderer/shell/screens.ts';

type Item = MenuItemConstructorOptions;

function actions() {
  const names = [
    'newCatalogue',
    'openCatalogue',
    'openRecent',
    'clearRecent',
    'showInFolder',
    'savePdf',
    'print',
    'go',
    'showLog',
  ] as const;
  return Object.fromEntries(names.map((name) => [name, vi.fn()])) as unknown as MenuActions;
}

function menu(platform: NodeJS.Platform, recent: string[] = [], packaged = true, own = actions()) {
  return menuTemplate({ platform, packaged, recent, actions: own });
}

const below = (item: Item | undefined): Item[] => (Array.isArray(item?.submenu) ? item.submenu : []);
const all = (items: Item[]): Item[] => items.flatMap((item) => [item, ...all(below(item))]);
const named = (items: Item[], label: string) => all(items).find((item) => item.label === label);
const press = (item: Item | undefined) => (item as { click(): void }).click();

describe('the order, names and keys follow each system', () => {
  test('macOS keeps About, Settings and Quit under the program’s name and closes with the File menu', () => {
    const items = menu('darwin');
    expect(items[0]?.role).toBe('appMenu');
    expect(below(items[0]).map((item) => item.role ?? item.label ?? item.type)).toEqual([
      'about',
      'separator',
      'Settings…',
      'separator',
      'services',
      'separator',
      'hide',
      'hideOthers',
      'unhide',
      'separator',
      'quit',
    ]);
    expect(below(items[1]).at(-1)?.role).toBe('close');
    expect(named(items, 'Show in Finder')).toBeDefined();
  });

  test.each(['win32', 'linux'] as const)('%s has Settings and Quit in File and About in Help', (platform) => {
    const items = menu(platform);
    expect(items[0]?.label).toBe('&File');
    expect(below(items[0]).at(-1)?.role).toBe('quit');
    expect(below(items[0]).map((item) => item.label)).toContain('Settings…');
    expect(below(items.at(-1)).at(-1)?.role).toBe('about');
    expect(items.map((item) => item.role ?? item.label)).toEqual([
      '&File',
      'editMenu',
      '&Go',
      '&View',
      'windowMenu',
      'help',
    ]);
  });

  test.each(['darwin', 'win32', 'linux'] as const)('on %s no key is given twice', (platform) => {
    const keys = all(menu(platform)).flatMap((item) => (item.accelerator ? [String(item.accelerator)] : []));
    expect(new Set(keys).size).toBe(keys.length);
    for (const key of ['CmdOrCtrl+N', 'CmdOrCtrl+O', 'CmdOrCtrl+P', 'CmdOrCtrl+,'])
      expect(keys).toContain(key);
  });
});

test('every item that is no role does something', () => {
  const own = actions();
  const items = all(menu('linux', ['/press/salt.ledger'], true, own));
  for (const item of items) {
    if (item.role || item.type === 'separator' || item.submenu) continue;
    expect([item.label, typeof item.click]).toEqual([item.label, 'function']);
    press(item);
  }
  for (const fn of Object.values(own)) expect(fn).toHaveBeenCalled();
});

test('the Go menu lists the screens of the pages, in their order', () => {
  expect(SCREENS).toEqual(PAGE_SCREENS.map(({ name, path }) => ({ name, path })));
  const own = actions();
  const items = menu('linux', [], true, own);
  press(named(items, 'Numbers'));
  expect(own.go).toHaveBeenCalledWith('/numbers');
});

test('recent catalogues are listed by their path, with ampersands as they are', () => {
  const own = actions();
  const items = menu('linux', ['/press/Halyard & Fen.ledger'], true, own);
  press(named(items, '/press/Halyard && Fen.ledger'));
  expect(own.openRecent).toHaveBeenCalledWith('/press/Halyard & Fen.ledger');
  expect(named(menu('linux'), 'Clear the List')?.enabled).toBe(false);
});

test('a packaged program offers no developer tools', () => {
  const roles = (packaged: boolean) => all(menu('linux', [], packaged)).map((item) => item.role);
  expect(roles(true)).not.toContain('toggleDevTools');
  expect(roles(true)).not.toContain('reload');
  expect(roles(false)).toContain('toggleDevTools');
});
