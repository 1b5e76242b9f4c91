import type { Settings } from '../../../src/contract/settings.ts';
import type { Changes } from './kept-changes.ts';

/** What each part of the settings form takes: the settings as typed, and how to change them. */
export interface SettingFields {
  values: Settings;
  change: (more: Changes) => void;
  errorOf: (field: string) => string | undefined;
}
