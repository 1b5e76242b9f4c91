import { readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

const box = z.object({
  x: z.int(),
  y: z.int(),
  width: z.int().min(400).max(20_000),
  height: z.int().min(300).max(20_000),
});
const windowState = box.extend({ maximized: z.boolean() });
export type Box = z.infer<typeof box>;
export type WindowState = z.infer<typeof windowState>;

/** Where the window stood when it was last closed; undefined when that is unknown or unreadable. */
export function readWindowState(file: string): WindowState | undefined {
  try {
    return windowState.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    // A lost place is no reason not to open: the window then opens in the middle.
    return undefined;
  }
}

/** Remembers where the window stands; a full disk must not keep it from closing. */
export function writeWindowState(file: string, state: WindowState): void {
  try {
    writeFileSync(file, JSON.stringify(state));
  } catch (error) {
    console.error('The place of the window was not saved.', error);
  }
}

/** The remembered place if enough of its title bar lies on a screen that is still there, else undefined. */
export function placeOnScreens(state: WindowState | undefined, screens: readonly Box[]): Box | undefined {
  if (state === undefined) return undefined;
  const reachable = screens.some((screen) => {
    const across = Math.min(state.x + state.width, screen.x + screen.width) - Math.max(state.x, screen.x);
    return across >= 100 && state.y >= screen.y && state.y <= screen.y + screen.height - 40;
  });
  const { x, y, width, height } = state;
  return reachable ? { x, y, width, height } : undefined;
}
