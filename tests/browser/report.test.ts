import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The report from the Audit screen, in every form: the file that comes is the report of that day.

describe.skipIf(noBrowser)('the report from the screen', () => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  async function saved(button: string): Promise<{ name: string; text: string }> {
    const [download] = await Promise.all([w.page.waitForEvent('download'), w.press(button)]);
    return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'latin1') };
  }

  it.each([
    ['Save as PDF (A4)', /[.]pdf$/, /^%PDF-/],
    ['Save as PDF (Letter)', /[.]pdf$/, /^%PDF-/],
    ['Save as HTML', /[.]html$/, /^<!doctype html>/i],
    ['Save as text', /[.]txt$/, /The Salt Almanac/],
    ['Save as CSV', /[.]csv$/, /The Salt Almanac/],
    ['Save as JSON', /[.]json$/, /^\{\s/],
  ])('%s', async (button, name, content) => {
    await w.go('/audit');
    const file = await saved(button);
    expect(file.name).toMatch(name);
    expect(file.name).toContain('2026-11-25');
    expect(file.text).toMatch(content);
  });

  it('tells a past day in the name of its report', async () => {
    await w.go('/audit', 'asOf=2021-06-01');
    expect((await saved('Save as text')).name).toContain('2021-06-01');
  });
});
