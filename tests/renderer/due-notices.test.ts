import { expect, test } from 'vitest';
import { noticeOf } from '../../renderer/shell/due-notices.ts';

test('a notice names the first task that is due, whether it is overdue, and how many more there are', () => {
  const task = { title: 'Order the proof', overdue: false };
  expect(noticeOf([], 0)).toBeUndefined();
  expect(noticeOf([task], 1)).toEqual({ title: 'One task is due', body: 'Order the proof.' });
  expect(noticeOf([{ ...task, overdue: true }], 2)).toEqual({
    title: '2 tasks are due',
    body: 'Order the proof (overdue). And one more.',
  });
  expect(noticeOf([task], 9)?.body).toBe('Order the proof. And 8 more.');
});
