import { operations } from '../../../src/contract/index.ts';
import type { Maker } from '../../support/history.ts';

const COMMANDS = Object.values(operations)
  .filter((operation) => operation.kind === 'command')
  .map((operation) => operation.name);

/** Inputs that no form can be filled in with. */
const SHAPES: readonly unknown[] = [
  null,
  [],
  'text',
  5,
  Number.NaN,
  { id: 'one' },
  { id: -1 },
  { id: 1.5 },
  { id: Number.MAX_VALUE },
  { title: 'x'.repeat(3000) },
  { title: ['a', 'b'] },
  { isbn: { toString: 'x' } },
  { planId: null, formatId: {}, editionId: [] },
  JSON.parse('{"__proto__": {"title": "x"}, "constructor": 1}'),
];

/** Texts that have broken programs: ends of strings, halves of characters, quotes, markup. */
const TEXTS: readonly string[] = [
  'a\u0000b',
  '\ud800',
  'x\udfffy',
  '\uffff',
  "'; DROP TABLE number; --",
  '{"a": [1]}',
  '\u202eright to left',
  'é',
  '🐟'.repeat(200),
  '\ufeffbom',
  'line\r\nline\u2028',
];

const garbage: Maker = (_world, dice, wrong) => {
  if (wrong) {
    const name = dice.oneOf('works.destroy', '', '__proto__', 'constructor', 'works.create ');
    return { name, input: {}, expect: 'UNKNOWN_OPERATION' };
  }
  return { name: dice.of(COMMANDS) ?? 'works.create', input: dice.of(SHAPES), expect: 'either' };
};

const nastyText: Maker = (world, dice, wrong) => {
  const text = dice.of(TEXTS) ?? '';
  const id = dice.of([...world.works.keys()]);
  if (wrong || id === undefined)
    return { name: 'channels.create', input: { name: text, contact: text, note: text }, expect: 'either' };
  return { name: 'works.update', input: { id, title: text, note: text }, expect: 'ok' };
};

export const garbageMoves = { garbage, nastyText };
