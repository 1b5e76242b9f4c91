import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

type Theme = 'light' | 'dark';

const css = readFileSync(new URL('../../renderer/styles/tokens.css', import.meta.url), 'utf8');
const tokens = new Map(
  [...css.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(
    ([, name, light, dark]) => [String(name), { light: String(light), dark: String(dark) }],
  ),
);

function colour(name: string, theme: Theme): string {
  const token = tokens.get(name);
  if (!token) throw new Error(`tokens.css sets no colour --${name}`);
  return token[theme];
}

/** Relative luminance as WCAG 2.2 defines it. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

const GROUNDS = ['paper', 'paper-shade', 'paper-raised', 'accent-wash', 'care-wash', 'stop-wash'];
const TEXTS = ['ink', 'ink-soft', 'accent', 'accent-strong', 'care', 'stop', 'stop-strong'];
const ON_COLOUR = [
  ['on-accent', 'accent'],
  ['on-accent', 'accent-strong'],
  ['on-stop', 'stop'],
  ['on-stop', 'stop-strong'],
] as const;

test('black on white is 21:1, as WCAG 2.2 says of its own formula', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
});

describe.each(['light', 'dark'] as const)('%s theme', (theme) => {
  test.each(GROUNDS.flatMap((ground) => TEXTS.map((text) => [text, ground] as const)))(
    'text in %s on %s reaches 4.5:1 (WCAG 2.2, 1.4.3)',
    (text, ground) => {
      expect(contrast(colour(text, theme), colour(ground, theme))).toBeGreaterThanOrEqual(4.5);
    },
  );

  test.each(ON_COLOUR)('text in %s on %s reaches 4.5:1 (WCAG 2.2, 1.4.3)', (text, ground) => {
    expect(contrast(colour(text, theme), colour(ground, theme))).toBeGreaterThanOrEqual(4.5);
  });

  test.each(GROUNDS)('the edge of a control on %s reaches 3:1 (WCAG 2.2, 1.4.11)', (ground) => {
    expect(contrast(colour('edge', theme), colour(ground, theme))).toBeGreaterThanOrEqual(3);
  });
});
