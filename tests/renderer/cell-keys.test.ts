import fc from 'fast-check';
import { expect, test } from 'vitest';
import { targetCell } from '../../renderer/screens/numbers/cell-keys.ts';

const press = (key: string, more: Partial<{ ctrlKey: boolean; metaKey: boolean; altKey: boolean }> = {}) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  ...more,
});

test('arrow keys walk a block of a hundred in rows of ten', () => {
  expect(targetCell(press('ArrowRight'), 9, 10, 100)).toBe(10);
  expect(targetCell(press('ArrowLeft'), 10, 10, 100)).toBe(9);
  expect(targetCell(press('ArrowDown'), 9, 10, 100)).toBe(19);
  expect(targetCell(press('ArrowUp'), 9, 10, 100)).toBe(9);
  expect(targetCell(press('ArrowDown'), 95, 10, 100)).toBe(95);
  expect(targetCell(press('PageDown'), 32, 10, 100)).toBe(82);
  expect(targetCell(press('PageUp'), 32, 10, 100)).toBe(2);
});

test('Home and End keep to the row, with Ctrl to the whole', () => {
  expect(targetCell(press('Home'), 34, 10, 100)).toBe(30);
  expect(targetCell(press('End'), 34, 10, 100)).toBe(39);
  expect(targetCell(press('End'), 12, 10, 13)).toBe(12);
  expect(targetCell(press('Home', { ctrlKey: true }), 34, 10, 100)).toBe(0);
  expect(targetCell(press('End', { metaKey: true }), 34, 10, 100)).toBe(99);
});

test('a row stays whole where a division would not', () => {
  expect(targetCell(press('PageUp'), 26, 3, 27)).toBe(11);
});

test('other keys are left alone', () => {
  expect(targetCell(press('a'), 3, 10, 100)).toBeUndefined();
  expect(targetCell(press('ArrowDown', { ctrlKey: true }), 3, 10, 100)).toBeUndefined();
  expect(targetCell(press('ArrowLeft', { altKey: true }), 3, 10, 100)).toBeUndefined();
});

test('no key leads outside the grid, and up and down stay in their column', () => {
  const keys = ['ArrowRight', 'ArrowLeft', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'];
  fc.assert(
    fc.property(
      fc.constantFrom(...keys),
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 1, max: 1200 }),
      fc.nat(),
      (key, columns, count, seed) => {
        const place = seed % count;
        const next = targetCell(press(key), place, columns, count);
        expect(next).toBeGreaterThanOrEqual(0);
        expect(next).toBeLessThan(count);
        if (/Up|Down/.test(key)) expect((next ?? 0) % columns).toBe(place % columns);
      },
    ),
    { numRuns: 2000 },
  );
});
