import { expect, test } from 'vitest';
import { changesFrom, readKept } from '../../renderer/screens/settings/kept-changes.ts';
import { DEFAULT_SETTINGS } from '../../src/contract/settings.ts';

test('only what differs from the saved settings counts as changed', () => {
  const wanted = { publisher: 'Halyard & Fen', holidays: [], workingDays: [1, 2, 3, 4], currency: 'EUR' };
  expect(changesFrom(DEFAULT_SETTINGS, wanted)).toEqual({
    publisher: 'Halyard & Fen',
    workingDays: [1, 2, 3, 4],
  });
});

test('kept changes come back as typed, even half-typed', () => {
  const typed = { catalogueName: '', language: 'xy', removalOverdueDays: 20, holidays: ['2026-12-25'] };
  expect(readKept(JSON.stringify(typed))).toEqual(typed);
});

test('what is no setting, or of another kind, is forgotten', () => {
  const kept = { holidays: ['soon'], workingDays: 'all', removalOverdueDays: 0, publisher: 7, other: 1 };
  expect(readKept(JSON.stringify(kept))).toEqual({});
  for (const broken of [undefined, '', 'not JSON', '[', 'null', '7']) expect(readKept(broken)).toEqual({});
});
