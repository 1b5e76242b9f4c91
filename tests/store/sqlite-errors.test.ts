import { expect, it } from 'vitest';
import { Refusal } from '../../src/contract/refusal.ts';
import { refusalOf } from '../../src/store/sqlite-errors.ts';

const sqlite = (code: string, message = 'as SQLite says it') => Object.assign(new Error(message), { code });

it.each([
  ['SQLITE_FULL', 'DISK_TROUBLE', /full/],
  ['SQLITE_READONLY_DIRECTORY', 'DISK_TROUBLE', /cannot be written/],
  ['SQLITE_IOERR_FSYNC', 'DISK_TROUBLE', /drive is still there/],
  ['SQLITE_IOERR_READ', 'DISK_TROUBLE', /drive is still there/],
  ['SQLITE_CANTOPEN', 'DISK_TROUBLE', /cannot be opened/],
  ['SQLITE_BUSY', 'CATALOGUE_IN_USE', /Another program/],
  ['SQLITE_CORRUPT', 'CATALOGUE_DAMAGED', /damaged/],
])('%s is told as %s in one sentence, wrapped or not', (code, told, sentence) => {
  for (const error of [sqlite(code), new Error('wrapped', { cause: sqlite(code) })]) {
    const refusal = refusalOf(error);
    expect(refusal).toBeInstanceOf(Refusal);
    expect((refusal as Refusal).code).toBe(told);
    expect((refusal as Refusal).message).toMatch(sentence);
  }
});

it('passes a trigger’s own refusal on, and anything else as it came', () => {
  expect(
    refusalOf(sqlite('SQLITE_CONSTRAINT_TRIGGER', 'NUMBER_SPENT: a spent number can never be changed.')),
  ).toMatchObject({
    code: 'NUMBER_SPENT',
    message: 'A spent number can never be changed.',
  });
  const stranger = new Error('something else');
  expect(refusalOf(stranger)).toBe(stranger);
});
