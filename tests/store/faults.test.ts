import { describe, expect, it } from 'vitest';
import { fullDisks } from '../faults/disk.ts';
import type { Figure } from '../faults/figure.ts';
import { flippedBits } from '../faults/flips.ts';
import { hostileStatements } from '../faults/hostile.ts';
import { kills } from '../faults/kill.ts';
import { alteredRules } from '../faults/rules.ts';
import { tornLogs } from '../faults/torn.ts';

// A short set of what `npm run faults` runs at length.

function expectHeld({ tried, failed }: Figure, wanted: number): void {
  expect(failed).toEqual([]);
  expect(tried).toBeGreaterThanOrEqual(wanted);
}

describe('a catalogue file', () => {
  it('keeps every acknowledged change when its writer is killed', async () => {
    expectHeld(await kills(10, 11, 5), 10);
  });

  it('opens whole or is told when bits of it are flipped', () => {
    expectHeld(flippedBits(20, 12), 20);
  });

  it('opens at the last whole commit when its log ends anywhere', () => {
    expectHeld(tornLogs(20, 13), 20);
  });

  it('refuses in a sentence and loses nothing on a full disk', ({ skip }) => {
    const figure = fullDisks(5, 14);
    const skipped = figure.notes.find((note) => note.startsWith('skipped'));
    if (skipped) skip(skipped);
    expectHeld(figure, 5);
  });

  it('keeps its numbers, locks and standings against hostile SQL, and names what was done', () => {
    expectHeld(hostileStatements(960, 15), 960);
  });

  it('is told when a rule was altered or taken away', () => {
    expectHeld(alteredRules(3), 400);
  });
});
