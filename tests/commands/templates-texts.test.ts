import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { TEXTS } from '../../src/contract/text-kinds.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let test: TestCatalogue;
beforeEach(() => {
  test = openTestCatalogue();
});
afterEach(() => test.close());

const inUse = () =>
  test.call('templates.texts', {}).texts.find(({ kind }) => kind === 'chase') ?? { version: -1, body: '' };
const save = (body: string, note = '') =>
  test.call('templates.saveText', { kind: 'chase', subject: 'Again: {title}', body, note }).version;
const versions = () =>
  test.call('templates.textVersions', { kind: 'chase' }).versions.map(({ version, body }) => [version, body]);

describe('texts', () => {
  it('are our own until something is saved', () => {
    expect(inUse()).toMatchObject({ version: 0, body: TEXTS.chase.body, savedOn: null });
  });

  it('keep every version, to be read and put back', () => {
    expect(save('Asked on {asked}.')).toBe(1);
    test.setToday('2026-03-05');
    expect(save('Asked on {asked}, please.', 'Friendlier')).toBe(2);
    expect(inUse()).toMatchObject({ version: 2, note: 'Friendlier', savedOn: '2026-03-05' });
    expect(test.call('templates.putBackText', { kind: 'chase', version: 0 }).version).toBe(3);
    expect(versions()).toEqual([
      [3, TEXTS.chase.body],
      [2, 'Asked on {asked}, please.'],
      [1, 'Asked on {asked}.'],
      [0, TEXTS.chase.body],
    ]);
    expect(inUse()).toMatchObject({ version: 3, note: "The program's own text put back" });
    expect(test.refusal('templates.putBackText', { kind: 'chase', version: 3 }).code).toBe('STEP_REFUSED');
    expect(test.refusal('templates.putBackText', { kind: 'chase', version: 9 }).code).toBe('NOT_FOUND');
  });

  it('saved as they are make no version', () => {
    save('Asked on {asked}.');
    expect(save('Asked on {asked}.')).toBe(1);
  });

  it('are refused with the place of what nothing fills, and nothing is kept', () => {
    const refused = test.refusal('templates.saveText', { kind: 'chase', subject: 'x', body: 'A\nB {price}' });
    expect(refused).toMatchObject({ code: 'BAD_INPUT', field: 'body' });
    expect(refused.message).toContain('Line 2, sign 3: nothing fills {price}.');
    expect(test.refusal('templates.saveText', { kind: 'chase', subject: '{x}', body: 'A' }).field).toBe(
      'subject',
    );
    expect(test.refusal('templates.saveText', { kind: 'chase', subject: '', body: 'A' }).field).toBe(
      'subject',
    );
    expect(
      test.refusal('templates.saveText', { kind: 'copyright page', subject: 'S', body: 'A' }).field,
    ).toBe('subject');
    expect(versions().length).toBe(1);
  });

  it('can be undone while they are the last change', () => {
    save('Asked on {asked}.');
    const { commandSeq } = test.call('journal.list', { count: 1 }).entries[0] ?? { commandSeq: 0 };
    test.call('journal.undo', { commandSeq });
    expect(inUse().version).toBe(0);
  });
});
