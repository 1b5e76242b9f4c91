import type { DeskStep, STOCK_FATES } from '../../../../src/contract/retirement.ts';

/** The button of each next step; empty where nothing is to be pressed. */
export const STEP_WORDS: Record<DeskStep, string> = {
  'wait for sale': 'Ask anyway',
  ask: 'Ask',
  'await promise': 'Note the promise',
  'confirm gone': 'Confirm gone',
  chase: 'Chase',
  'take back': 'Take back',
  nothing: '',
};

export const FATE_WORDS: Record<(typeof STOCK_FATES)[number], string> = {
  undecided: 'Not decided',
  'sell off': 'Sold off',
  'give away': 'Given away',
  keep: 'Kept',
  recycle: 'Recycled',
};
