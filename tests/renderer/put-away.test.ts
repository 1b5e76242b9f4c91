import { expect, test } from 'vitest';
import { readPutAway, stillPutAway } from '../../renderer/shell/put-away.ts';

test('a warning stays put away while its text stays the same', () => {
  const away = ['The clock was set back.', 'The folder is synced.'];
  expect(stillPutAway(away, ['The folder is synced.', 'Something new.'])).toEqual(['The folder is synced.']);
  expect(stillPutAway(away, [])).toEqual([]);
});

test('what was kept comes back, and whatever is no list of texts is forgotten', () => {
  expect(readPutAway(JSON.stringify(['One.', 7, null, 'Two.']))).toEqual(['One.', 'Two.']);
  for (const broken of [undefined, '', '[', 'null', '7', '{"a":1}']) expect(readPutAway(broken)).toEqual([]);
});
