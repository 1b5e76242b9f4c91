import { describe, expect, it } from 'vitest';
import { checkLine, reading } from '../../src/contract/proof-checks/facts.ts';

const blank = {
  of: 'audio',
  files: [{ name: '01.mp3', bytes: 10, seconds: null }],
  titles: [],
  isbns: [],
  unread: [],
};

describe('what a reader hands over', () => {
  it('is taken with its file hash and refused without', () => {
    const whole = { fileName: 'a.zip', bytes: 10, sha256: 'a'.repeat(64), facts: blank, pictures: [] };
    expect(reading.safeParse(whole).success).toBe(true);
    expect(reading.safeParse({ ...whole, sha256: 'A'.repeat(64) }).success).toBe(false);
    expect(reading.safeParse({ ...whole, facts: { ...blank, of: 'film' } }).success).toBe(false);
  });

  it('leads to lines of four states', () => {
    const line = {
      check: 'audio.files',
      label: 'Files',
      state: 'agreed',
      expected: '1',
      found: '1',
      advice: '',
      page: null,
      box: null,
    };
    expect(checkLine.safeParse(line).success).toBe(true);
    expect(checkLine.safeParse({ ...line, state: 'fine' }).success).toBe(false);
  });
});
