/** The screens of the pages as the Go menu lists them; a test holds them against the pages' own list. */
export const SCREENS = [
  { name: 'Catalogue', path: '/catalogue' },
  { name: 'Work', path: '/work' },
  { name: 'Numbers', path: '/numbers' },
  { name: 'Channels', path: '/channels' },
  { name: 'Agenda', path: '/agenda' },
  { name: 'Audit', path: '/audit' },
  { name: 'Journal', path: '/journal' },
  { name: 'Settings', path: '/settings' },
  { name: 'Help', path: '/help' },
] as const;
