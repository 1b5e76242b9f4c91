import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { placeOnScreens, readWindowState, writeWindowState } from '../../electron/window-state.ts';

const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-window-'));
const state = { x: 10, y: 20, width: 900, height: 700, maximized: false };
const screen = { x: 0, y: 0, width: 1920, height: 1080 };

test('the place of the window is remembered', () => {
  const file = join(folder, 'window.json');
  writeWindowState(file, state);
  expect(readWindowState(file)).toEqual(state);
});

test.each(['', '{', '[]', '{"x":"a"}', JSON.stringify({ ...state, width: 1 })])(
  'an unreadable place (%s) is none',
  (text) => {
    const file = join(folder, 'bad.json');
    writeFileSync(file, text);
    expect(readWindowState(file)).toBeUndefined();
    expect(readWindowState(join(folder, 'missing.json'))).toBeUndefined();
  },
);

test('a place is used only while a screen shows enough of it', () => {
  const { maximized: _, ...box } = state;
  expect(placeOnScreens(state, [screen])).toEqual(box);
  expect(placeOnScreens({ ...state, x: 5000 }, [screen])).toBeUndefined();
  expect(placeOnScreens({ ...state, y: -300 }, [screen])).toBeUndefined();
  expect(placeOnScreens({ ...state, y: 1070 }, [screen])).toBeUndefined();
  expect(placeOnScreens({ ...state, x: -850 }, [screen])).toBeUndefined();
  expect(placeOnScreens({ ...state, x: 2000 }, [screen, { ...screen, x: 1920 }])).toMatchObject({ x: 2000 });
  expect(placeOnScreens(undefined, [screen])).toBeUndefined();
});
