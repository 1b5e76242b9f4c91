import type { Block } from '../contract/blocks.ts';
import { Refusal } from '../contract/refusal.ts';
import { blockFacts } from '../records/blocks.ts';
import { type BlockShape, parseBlock } from '../rules/isbn/index.ts';
import type { WriteDb } from '../store/connection.ts';
import { adoptNumbers, allBlocks, blockById } from '../store/numbers.ts';
import type { Commands } from './context.ts';

function loadBlock(db: WriteDb, id: number): Block {
  const stored = blockById(db, id);
  if (!stored)
    throw new Refusal('NOT_FOUND', `There is no block ${id}; the Numbers screen lists them.`, 'id');
  return blockFacts(db, stored);
}

/** Refuses a block that shares numbers with one already recorded. */
function refuseOverlap(db: WriteDb, shape: BlockShape): void {
  const clash = allBlocks(db).find(
    (block) => block.digits.startsWith(shape.digits) || shape.digits.startsWith(block.digits),
  );
  if (clash)
    throw new Refusal(
      'BLOCK_OVERLAP',
      `The block ${clash.hyphenatedPrefix} is already recorded and shares these numbers; record each block once.`,
      'prefix',
    );
}

export const blockCommands = {
  'blocks.add': ({ db }, input) => {
    const parsed = parseBlock(input.prefix);
    if (!parsed.ok)
      throw new Refusal(
        'NUMBER_INVALID',
        [parsed.problem.message, parsed.problem.hint].filter(Boolean).join(' '),
        'prefix',
      );
    refuseOverlap(db, parsed.block);
    const { lastInsertRowid: id } = db.run(
      `INSERT INTO number_block (digits, hyphenated_prefix, agency, label, note, bought_on, cost_minor, cost_currency)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      parsed.block.digits,
      parsed.block.hyphenatedPrefix,
      parsed.block.agency,
      input.label,
      input.note,
      input.boughtOn,
      input.cost?.amountMinor ?? null,
      input.cost?.currency ?? null,
    );
    adoptNumbers(db, { id, digits: parsed.block.digits, publicationDigits: parsed.block.publicationDigits });
    return loadBlock(db, id);
  },

  'blocks.update': ({ db }, input) => {
    const now = loadBlock(db, input.id);
    const cost = input.cost === undefined ? now.cost : input.cost;
    db.run(
      'UPDATE number_block SET label = ?, note = ?, bought_on = ?, cost_minor = ?, cost_currency = ? WHERE id = ?',
      input.label ?? now.label,
      input.note ?? now.note,
      input.boughtOn === undefined ? now.boughtOn : input.boughtOn,
      cost?.amountMinor ?? null,
      cost?.currency ?? null,
      input.id,
    );
    return loadBlock(db, input.id);
  },
} satisfies Commands<'blocks.add' | 'blocks.update'>;
