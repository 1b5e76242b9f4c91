import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Launched, launch } from '../support/launch.ts';

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
const missing = !existsSync(CHROMIUM) && !process.env.CI;
if (missing) console.log(`Not run: there is no browser at ${CHROMIUM}; set CHROMIUM to its path.`);

let launched: Launched;
let browser: Browser;

beforeAll(async () => {
  if (missing) return;
  launched = await launch({ demo: true });
  browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
});
afterAll(async () => {
  await browser?.close();
  await launched?.stop();
});

test.skipIf(missing)(
  'a real browser comes in by the start address, keeps no key in sight, and breaks no rule of the pages',
  async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    await page.goto(launched.startUrl);
    await page.getByText('must never be printed').first().waitFor();
    expect(new URL(page.url()).pathname).toBe('/');
    expect(page.url()).not.toContain(new URL(launched.startUrl).pathname.split('/').at(-1));
    expect(await page.evaluate(() => document.cookie)).toBe('');
    expect(await context.cookies()).toMatchObject([{ httpOnly: true, sameSite: 'Strict' }]);
    expect(complaints).toEqual([]);
    const other = await (await browser.newContext()).newPage();
    expect((await other.goto(launched.startUrl))?.status()).toBe(401);
    expect((await other.goto(launched.origin))?.status()).toBe(401);
  },
);

test.skipIf(missing)('a change made elsewhere reaches an open window by itself', async () => {
  const page = await (await browser.newContext()).newPage();
  await page.goto(launched.newStartUrl());
  await page.getByText('must never be printed').first().waitFor();
  await launched.call('works.create', { title: 'Tide Tables for Nettlewick' });
  await page.getByText('Tide Tables for Nettlewick').first().waitFor({ timeout: 10_000 });
});

test.skipIf(missing)(
  'a page elsewhere cannot read, embed or post, even with the cookie in the jar',
  async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(launched.newStartUrl());
    await page.getByText('must never be printed').first().waitFor();
    const before = await launched.call('journal.list', { count: 1 });
    // A data: page is a foreign origin without needing a second server.
    await page.goto('data:text/html,<title>elsewhere</title>');
    const outcome = await page.evaluate(async (origin) => {
      const attempt = (path: string, init: RequestInit) =>
        fetch(origin + path, { credentials: 'include', ...init }).then(
          (reply) => `answered ${reply.type} ${reply.status}`,
          () => 'failed',
        );
      const post = { method: 'POST', body: '{"title":"Forged"}' };
      const json = { ...post, headers: { 'content-type': 'application/json' } };
      const simple = { ...post, mode: 'no-cors' as const, headers: { 'content-type': 'text/plain' } };
      return [
        await attempt('/', {}),
        await attempt('/call/works.create', json),
        await attempt('/call/works.create', simple),
      ];
    }, launched.origin);
    expect(outcome.slice(0, 2)).toEqual(['failed', 'failed']);
    expect((await launched.call('journal.list', { count: 1 })).entries[0]?.seq).toBe(before.entries[0]?.seq);
  },
);
