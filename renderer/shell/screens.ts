import { type ComponentType, type LazyExoticComponent, lazy } from 'react';

export interface ScreenEntry {
  name: string;
  /** First segment of the screen's routes; the rest belongs to the screen. */
  path: string;
  /** Pressed after `g`. */
  key: string;
  screen: LazyExoticComponent<ComponentType>;
}

/** What the window opens with. */
export const FIRST_SCREEN = lazy(() => import('../screens/catalogue/index.tsx'));

/** The screens in the order of the navigation. */
export const SCREENS: readonly ScreenEntry[] = [
  {
    name: 'Catalogue',
    path: '/catalogue',
    key: 'c',
    screen: FIRST_SCREEN,
  },
  { name: 'Work', path: '/work', key: 'w', screen: lazy(() => import('../screens/work/index.tsx')) },
  { name: 'Numbers', path: '/numbers', key: 'n', screen: lazy(() => import('../screens/numbers/index.tsx')) },
  {
    name: 'Channels',
    path: '/channels',
    key: 'h',
    screen: lazy(() => import('../screens/channels/index.tsx')),
  },
  { name: 'Agenda', path: '/agenda', key: 'a', screen: lazy(() => import('../screens/agenda/index.tsx')) },
  { name: 'Audit', path: '/audit', key: 'u', screen: lazy(() => import('../screens/audit/index.tsx')) },
  { name: 'Journal', path: '/journal', key: 'j', screen: lazy(() => import('../screens/journal/index.tsx')) },
  {
    name: 'Settings',
    path: '/settings',
    key: 's',
    screen: lazy(() => import('../screens/settings/index.tsx')),
  },
  { name: 'Help', path: '/help', key: 'p', screen: lazy(() => import('../screens/help/index.tsx')) },
];

let lastWork = '/work';

/** Remembers the work that is open, so that the navigation leads back to it. */
export function noteVisit(path: string): void {
  if (path.startsWith('/work/')) lastWork = path;
}

/** Where an entry of the navigation leads. */
export function routeOf(entry: ScreenEntry): string {
  return entry.path === '/work' ? lastWork : entry.path;
}

/** Whether a path lies within a screen. */
export function isAt(entry: ScreenEntry, path: string): boolean {
  return (
    path === entry.path ||
    path.startsWith(`${entry.path}/`) ||
    (path === '/' && entry.screen === FIRST_SCREEN)
  );
}
