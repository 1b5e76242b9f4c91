import { expect, test } from 'vitest';
import type { AudioFacts } from '../../src/contract/proof-checks/facts.ts';
import { checkFile, RULE_SET } from '../../src/rules/proof-check/index.ts';
import { proofRecord } from '../support/proof-files/record.ts';

const AUDIO: AudioFacts = { of: 'audio', files: [], titles: [], isbns: [], unread: [] };

test('a file of another kind cannot be told, and what was not read is said', () => {
  expect(RULE_SET).toBeGreaterThan(0);
  const lines = checkFile('interior', { ...AUDIO, unread: ['The second file is cut off.'] }, proofRecord());
  expect(lines.map((line) => [line.check, line.state])).toEqual([
    ['file.kind', 'cannot tell'],
    ['file.unread', 'cannot tell'],
  ]);
  expect(lines[1]?.found).toBe('The second file is cut off.');
});
