import { useEffect } from 'react';
import type { Settings } from '../src/contract/settings.ts';
import { recall, remember } from './lib/memory.ts';

type Theme = Settings['theme'];

const MEMORY = 'theme';

function show(theme: Theme): void {
  document.documentElement.dataset.theme = theme;
}

/** Before the settings are read: the theme this window showed last, so that it does not flash. */
export function showLastTheme(): void {
  const last = recall(MEMORY);
  show(last === 'light' || last === 'dark' ? last : 'auto');
}

/** Shows the theme that the settings choose; `auto` follows the system. */
export function useTheme(theme: Theme | undefined): void {
  useEffect(() => {
    if (theme === undefined) return;
    show(theme);
    remember(MEMORY, theme);
  }, [theme]);
}
