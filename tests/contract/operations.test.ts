import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { commands } from '../../src/commands/index.ts';
import { operations } from '../../src/contract/index.ts';
import { errands } from '../../src/errands/index.ts';
import { queries } from '../../src/queries/index.ts';
import { readings } from '../../src/readings/index.ts';
import { openTestCatalogue } from '../support/catalogue.ts';

const all = Object.values(operations);

describe('the contract', () => {
  it('has one handler for each operation, of its kind, and no handler beside', () => {
    const handlers = {
      command: Object.keys(commands),
      query: Object.keys(queries),
      errand: Object.keys(errands),
      reading: Object.keys(readings),
    };
    for (const kind of ['command', 'query', 'errand', 'reading'] as const)
      expect(handlers[kind].sort()).toEqual(
        all
          .filter((entry) => entry.kind === kind)
          .map((entry) => entry.name)
          .sort(),
      );
  });

  it.each(all)(
    '$name can be put as JSON Schema and says in a sentence what it does',
    ({ name, input, output, summary }) => {
      expect(name).toMatch(/^[a-z]+[a-zA-Z]*\.[a-zA-Z]+$/);
      expect(summary).toMatch(/^[A-Z].*[.]$/s);
      for (const schema of [input, output])
        expect(z.toJSONSchema(schema, { io: 'input' })).toHaveProperty('type');
    },
  );

  it.each(all)('$name answers junk with one sentence and never breaks', ({ name }) => {
    const catalogue = openTestCatalogue();
    for (const junk of [
      null,
      undefined,
      0,
      'text',
      [],
      { id: 'x' },
      { id: -1 },
      { id: Number.POSITIVE_INFINITY },
      { __proto__: { id: 1 } },
      { id: 999_999 },
    ]) {
      const answer = catalogue.app.call(name, junk);
      if (answer.ok) continue;
      expect(answer.error.code).not.toBe('INTERNAL');
      expect(answer.error.message.length).toBeGreaterThan(10);
    }
    catalogue.close();
  });

  it('refuses an operation that does not exist', () => {
    const catalogue = openTestCatalogue();
    for (const name of ['works.burn', '', '__proto__', 'constructor', 'toString'])
      expect(catalogue.app.call(name, {})).toMatchObject({ ok: false, error: { code: 'UNKNOWN_OPERATION' } });
    catalogue.close();
  });
});
