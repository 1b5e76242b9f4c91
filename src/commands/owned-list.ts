import { Refusal } from '../contract/refusal.ts';
import { type OwnedNumber, type OwnedNumbers, readOwnedNumbers } from '../exchange/owned-numbers.ts';
import { numberByIsbn } from '../records/numbers.ts';
import { allBlocks, insertNumber } from '../store/numbers.ts';
import { blockCommands } from './blocks.ts';
import type { CommandContext, Commands } from './context.ts';

/** Refuses a list with lines that are not understood, naming the first; nothing is half-saved. */
function refuseProblems(list: OwnedNumbers, goodLinesOnly: boolean): void {
  const [first] = list.problems;
  if (!first || (goodLinesOnly && list.blocks.length > 0)) return;
  const place = first.column === null ? `Line ${first.line}` : `Line ${first.line}, column ${first.column}`;
  const more = list.problems.length > 1 ? ` ${list.problems.length - 1} more lines are not understood.` : '';
  throw new Refusal(
    'NUMBER_INVALID',
    `${place} (${first.text}): ${[first.message, first.hint].filter(Boolean).join(' ')}${more}`,
    'text',
  );
}

/** Takes over what the list says of one number; answers what was done. */
function takeOver({ db, today }: CommandContext, number: OwnedNumber): 'reserved' | 'spent' | null {
  const { isbn13 } = number.isbn;
  if (number.use === null || number.use === 'free' || numberByIsbn(db, isbn13)) return null;
  const on = number.on !== null && number.on <= today ? number.on : today;
  const title = number.title.trim();
  if (number.use === 'spent')
    insertNumber(db, {
      isbn13,
      spentOn: on,
      spentReason: `Spent by the agency's list${title ? `: ${title}` : ''}`,
    });
  else insertNumber(db, { isbn13, reservedOn: on, reservedFor: title || 'Assigned by the agency’s list' });
  return number.use === 'spent' ? 'spent' : 'reserved';
}

export const ownedListCommands = {
  'blocks.importList': (context, { text, goodLinesOnly }) => {
    const list = readOwnedNumbers(text);
    refuseProblems(list, goodLinesOnly);
    const known = new Set(allBlocks(context.db).map((block) => block.digits));
    const done = { blocksAdded: 0, reserved: 0, spent: 0, leftAlone: 0 };
    for (const { block, numbers } of list.blocks) {
      if (!known.has(block.digits)) {
        blockCommands['blocks.add'](context, {
          prefix: block.hyphenatedPrefix,
          label: '',
          note: '',
          boughtOn: null,
          cost: null,
        });
        done.blocksAdded += 1;
      }
      for (const number of numbers) {
        const what = takeOver(context, number);
        if (what === null) done.leftAlone += 1;
        else done[what] += 1;
      }
    }
    return done;
  },
} satisfies Commands<'blocks.importList'>;
