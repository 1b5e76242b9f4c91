import { afterAll, beforeAll, expect, test } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

let w: Window;
const addresses = new Set<string>();

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ demo: true, today: '2026-11-25' });
  w.page.on('request', (request) => addresses.add(new URL(request.url()).origin));
});
afterAll(async () => {
  if (noBrowser) return;
  await w.close();
});

test.skipIf(noBrowser)(
  'Settings shows the licences of what is inside, and that no error was noted',
  async () => {
    await w.go('/settings');
    const about = w.page.getByRole('region', { name: 'About the program' });
    await about.getByText('No error was noted.').waitFor();
    await about.getByText('Licences of what is inside').click();
    await about.getByText(/^better-sqlite3 /).click();
    await expect
      .poll(() => about.locator('details[open] details[open] pre').textContent())
      .toContain('Permission is hereby granted');
    await w.picture('settings-program');
    expect(await w.faults()).toEqual([]);
  },
);

/** A file let go over the page, beside any place for files. */
async function drop(name: string): Promise<boolean> {
  return w.page.evaluate((fileName) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File(['x'], fileName));
    const event = new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true });
    document.querySelector('main')?.dispatchEvent(event);
    return event.defaultPrevented;
  }, name);
}

test.skipIf(noBrowser)('a file dropped beside its place leaves the page and is told of', async () => {
  expect(await drop('letter.pdf')).toBe(true);
  await w.page.getByText('whose name ends in .ledger').first().waitFor();
  expect(await drop('salt.ledger')).toBe(true);
  await w.page.getByText('A browser does not tell where a dropped file lies').first().waitFor();
});

test.skipIf(noBrowser)(
  'in the desktop window a dropped catalogue is opened and the Go menu leads to a screen',
  async () => {
    await w.page.evaluate(() => {
      const told: string[] = [];
      const topics = new Map<string, (data: unknown) => void>();
      const real = (name: string, input: unknown) =>
        fetch(`/call/${name}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(input),
        }).then((reply) => reply.json());
      Object.assign(window, {
        told,
        topics,
        editionLedger: {
          call: real,
          cancel: async () => false,
          subscribe: (topic: string, fn: (data: unknown) => void) => {
            topics.set(topic, fn);
            return () => topics.delete(topic);
          },
          openDropped: async (file: File) => told.push(file.name) > 0,
          dragOut: () => {},
        },
      });
      window.location.hash = '#/numbers';
    });
    await w.page.getByRole('heading', { level: 1, name: 'Numbers' }).waitFor();
    await drop('salt.ledger');
    expect(await w.page.evaluate(() => (window as unknown as { told: string[] }).told)).toEqual([
      'salt.ledger',
    ]);
  },
);

test.skipIf(noBrowser)('due tasks are told once a day, only after somebody asked for it', async () => {
  await w.launched.call('tasks.create', { title: 'Order the proof', dueOn: '2026-11-25' });
  await w.page.addInitScript(() => {
    const shown: string[] = JSON.parse(window.sessionStorage.getItem('shown') ?? '[]');
    class Recorded {
      static permission = 'granted';
      static requestPermission = async () => 'granted';
      constructor(title: string) {
        shown.push(title);
        window.sessionStorage.setItem('shown', JSON.stringify(shown));
      }
    }
    Object.assign(window, { Notification: Recorded, shown });
  });
  const shown = () => w.page.evaluate(() => window.sessionStorage.getItem('shown'));
  await w.page.reload();
  await w.go('/settings');
  expect(await shown()).toBeNull();
  await w.page.getByLabel('Tell me once a day of tasks that are due').check();
  await expect.poll(async () => (await shown()) ?? '').toMatch(/^\["(One task is|\d+ tasks are) due"\]$/);
  await w.page.reload();
  await w.page.getByRole('heading', { level: 1 }).waitFor();
  await w.page.waitForTimeout(500);
  expect(JSON.parse((await shown()) ?? '[]')).toHaveLength(1);
});

test.skipIf(noBrowser)('through all of it the page asked its own host and nobody else', () => {
  expect([...addresses].filter((origin) => origin !== 'null')).toEqual([w.launched.origin]);
  expect(w.complaints).toEqual([]);
});
