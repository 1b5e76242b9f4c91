import type { z } from 'zod';
import type { ownedList } from '../../../../src/contract/blocks.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';

export type OwnedList = z.infer<typeof ownedList>;
export type OwnedBlock = OwnedList['blocks'][number];
export type OwnedProblem = OwnedList['problems'][number];

/** Line breaks as the reader of the list counts them. */
const LINE_BREAK = /\r\n|\n|\r/g;

/**
 * The list with one cell mended on the line (from one) it stands on; undefined where the line does not hold it as it is
 * written, as in a quoted cell of several lines.
 */
export function mendLine(text: string, line: number, wrong: string, right: string): string | undefined {
  let start = 0;
  for (let passed = 1; passed < line; passed += 1) {
    LINE_BREAK.lastIndex = start;
    if (LINE_BREAK.exec(text) === null) return undefined;
    start = LINE_BREAK.lastIndex;
  }
  LINE_BREAK.lastIndex = start;
  const end = LINE_BREAK.exec(text)?.index ?? text.length;
  const at = text.indexOf(wrong, start);
  if (wrong === '' || at < 0 || at + wrong.length > end) return undefined;
  return text.slice(0, at) + right + text.slice(at + wrong.length);
}

/** How many numbers of a block the list calls free, assigned or spent, and of how many it says nothing. */
export function usesOf(block: Pick<OwnedBlock, 'numbers'>) {
  const uses = { free: 0, assigned: 0, spent: 0, unsaid: 0 };
  for (const { use } of block.numbers) uses[use ?? 'unsaid'] += 1;
  return uses;
}

function counted(count: number, one: string, many: string): string {
  return `${count.toLocaleString()} ${count === 1 ? one : many}`;
}

/** '2 blocks with 110 numbers are understood; 1 line needs a look.' */
export function foundInWords({ blocks, problems }: OwnedList): string {
  const numbers = blocks.reduce((sum, block) => sum + block.numbers.length, 0);
  const good =
    numbers === 0
      ? 'No number is understood'
      : `${counted(numbers, 'number', 'numbers')} in ${counted(blocks.length, 'block', 'blocks')} understood`;
  if (problems.length === 0) return `${good}.`;
  return `${good}; ${counted(problems.length, 'place needs a look', 'places need a look')}.`;
}

/** What recording the list has done, one sentence for each kind of thing. */
export function doneInWords(done: OutputOf<'blocks.importList'>): string[] {
  const { blocksAdded, reserved, spent, leftAlone } = done;
  return [
    blocksAdded === 0 ? 'No block is new.' : `${counted(blocksAdded, 'block is', 'blocks are')} recorded.`,
    ...(reserved === 0
      ? []
      : [`${counted(reserved, 'number is', 'numbers are')} reserved under the title in the list.`]),
    ...(spent === 0 ? [] : [`${counted(spent, 'number is', 'numbers are')} recorded as spent.`]),
    ...(leftAlone === 0
      ? []
      : [
          `${counted(leftAlone, 'number stays as it was', 'numbers stay as they were')}: free, or in use here already.`,
        ]),
  ];
}
