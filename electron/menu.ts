import type { MenuItemConstructorOptions } from 'electron';

/** The native menu: editing, view and window as the system has them; developer tools only in an unpacked program. */
export function menuTemplate(platform: NodeJS.Platform, packaged: boolean): MenuItemConstructorOptions[] {
  const mac = platform === 'darwin';
  const view: MenuItemConstructorOptions[] = [
    { role: 'resetZoom' },
    { role: 'zoomIn' },
    { role: 'zoomOut' },
    { type: 'separator' },
    { role: 'togglefullscreen' },
  ];
  if (!packaged) view.push({ type: 'separator' }, { role: 'reload' }, { role: 'toggleDevTools' });
  return [
    ...(mac ? [{ role: 'appMenu' } as const] : []),
    { label: 'File', submenu: [{ role: mac ? 'close' : 'quit' }] },
    { role: 'editMenu' },
    { label: 'View', submenu: view },
    { role: 'windowMenu' },
  ];
}
