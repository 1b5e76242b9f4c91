import { expect, it } from 'vitest';
import { fuzz } from '../fuzz/readers.ts';

it.each(['csv', 'xlsx', 'json'] as const)(
  'damaged %s files are taken or refused in a sentence, and leave nothing behind',
  (kind) => {
    const { refused, inputs } = fuzz(kind, 600, 42);
    expect(refused).toBeGreaterThan(inputs / 20);
  },
  300_000,
);
