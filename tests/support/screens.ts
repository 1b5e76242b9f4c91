import type { Window } from './browser.ts';

/** Every screen and page of the demo by its address. */
export interface Screen {
  /** As it is called in the names of pictures. */
  name: (typeof NAMES)[number];
  path: string;
  query?: string;
  /** The heading that says the screen is there. */
  heading: string | RegExp;
}

const PRESS = 'The Salt Almanac';

/** The names of all screens, before any is opened. */
export const NAMES = [
  'catalogue',
  'catalogue-formats',
  'catalogue-glance',
  'import',
  'export',
  'work',
  'sheet',
  'costs',
  'money',
  'desk',
  'check',
  'numbers',
  'channels',
  'channel-listings',
  'agenda',
  'audit',
  'journal',
  'journal-table',
  'settings',
  'help',
  'help-topic',
] as const;

/** The demo with a plan under way, so that no screen is empty; its ids are those of the demo's own order. */
export async function everyScreen(w: Window): Promise<Screen[]> {
  const { works } = await w.call('works.list', {});
  const work = works.find(({ title }) => title === PRESS)?.id ?? 0;
  const { editions } = await w.call('works.get', { id: work });
  const [second, first] = editions;
  const listing = second?.formats.flatMap(({ listings }) => listings)[0];
  if (!second || !first || !listing) throw new Error('The demo has no second edition with a listing.');
  await w.call('plans.release', { editionId: second.id, day: '2027-02-01' });
  await w.call('plans.retirement', { editionId: first.id });
  return [
    { name: 'catalogue', path: '/catalogue', heading: 'Catalogue' },
    { name: 'catalogue-formats', path: '/catalogue', query: 'part=formats', heading: 'Catalogue' },
    { name: 'catalogue-glance', path: '/catalogue', query: 'part=glance', heading: 'Catalogue' },
    { name: 'import', path: '/catalogue/import', heading: 'Import' },
    { name: 'export', path: '/catalogue/export', heading: 'Export' },
    { name: 'work', path: `/work/${work}`, heading: PRESS },
    { name: 'sheet', path: `/work/${work}/sheet/${listing.id}`, heading: 'Submission sheet' },
    { name: 'costs', path: `/work/${work}/costs/${second.id}`, heading: /cost/i },
    { name: 'money', path: `/work/${work}/money/${second.id}`, heading: /money/i },
    { name: 'desk', path: `/work/${work}/desk/${first.id}`, heading: /retire/i },
    { name: 'check', path: `/work/${work}/check/${listing.formatId}`, heading: 'Proof check' },
    { name: 'numbers', path: '/numbers', heading: 'Numbers' },
    { name: 'channels', path: '/channels', heading: 'Channels' },
    { name: 'channel-listings', path: `/channels/${listing.channelId}/listings`, heading: 'Listings' },
    { name: 'agenda', path: '/agenda', heading: 'Agenda' },
    { name: 'audit', path: '/audit', heading: 'Audit' },
    { name: 'journal', path: '/journal', heading: 'Journal' },
    { name: 'journal-table', path: '/journal', query: 'view=table', heading: 'Journal' },
    { name: 'settings', path: '/settings', heading: 'Settings' },
    { name: 'help', path: '/help', heading: 'Help' },
    { name: 'help-topic', path: '/help/locks', heading: /lock/i },
  ];
}

/** Opens a screen and waits until it has read what it shows. */
export async function openScreen(w: Window, { path, query, heading }: Screen): Promise<void> {
  await w.go(path, query);
  await w.page.getByRole('heading', { level: 1, name: heading }).waitFor();
  await w.quiet();
  // A part that is fetched only now has questions of its own.
  await w.page.locator('.waiting').waitFor({ state: 'detached' });
  await w.quiet();
}

/** By how many CSS pixels the page is wider than its window; 0 or less when it is not. */
export async function sidewaysOf(w: Window): Promise<number> {
  return w.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}
