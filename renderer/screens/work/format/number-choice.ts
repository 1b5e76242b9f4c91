import { useEffect, useState } from 'react';
import type { Block } from '../../../../src/contract/blocks.ts';
import type { InputOf } from '../../../../src/contract/index.ts';
import type { IsbnCheck } from '../../../../src/contract/isbns.ts';
import { useQueryOf } from '../../../api.ts';

/** `next`: the next free one of a block; `reserved`: one set aside earlier; `typed`: one that is picked by hand. */
export type NumberWay = 'next' | 'reserved' | 'typed';

export interface NumberChoice {
  way: NumberWay;
  /** Block of the next free number; undefined takes the first block that has one. */
  blockId: number | undefined;
  reserved: string;
  text: string;
  /** A typed number from outside every recorded block is meant. */
  outside: boolean;
  /** The day it is taken; empty for today. */
  on: string;
}

export const FIRST_CHOICE: NumberChoice = {
  way: 'next',
  blockId: undefined,
  reserved: '',
  text: '',
  outside: false,
  on: '',
};

const SETTLE_MS = 250;

/** What is wrong with a typed number, or where it stands; asked again once the typing pauses. */
export function useIsbnCheck(text: string): IsbnCheck | undefined {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = window.setTimeout(() => setSettled(text), SETTLE_MS);
    return () => window.clearTimeout(timer);
  }, [text]);
  const answer = useQueryOf('isbns.check', { texts: [settled] }, { enabled: settled.trim() !== '' });
  const check = answer.data?.checks[0];
  return check && settled === text && text.trim() !== '' ? check : undefined;
}

/** The block whose next free number would be taken. */
export function blockOfChoice(blocks: readonly Block[], blockId: number | undefined): Block | undefined {
  if (blockId !== undefined) return blocks.find((block) => block.id === blockId);
  return blocks.find((block) => block.counts.free > 0);
}

/** Why the choice cannot be carried out as it stands. */
export function blockedReason(choice: NumberChoice, blocks: readonly Block[]): string | undefined {
  if (choice.way === 'next')
    return blockOfChoice(blocks, choice.blockId)?.nextFree ? undefined : 'There is no free number to take.';
  if (choice.way === 'reserved') return choice.reserved === '' ? 'Choose a reserved number.' : undefined;
  return choice.text.trim() === '' ? 'Type the number.' : undefined;
}

/** The command's input for a choice. */
export function assignInput(formatId: number, choice: NumberChoice): InputOf<'numbers.assign'> {
  const on = choice.on === '' ? {} : { on: choice.on };
  if (choice.way === 'reserved') return { formatId, isbn: choice.reserved, ...on };
  if (choice.way === 'typed') return { formatId, isbn: choice.text, outsideBlocks: choice.outside, ...on };
  return choice.blockId === undefined ? { formatId, ...on } : { formatId, blockId: choice.blockId, ...on };
}
