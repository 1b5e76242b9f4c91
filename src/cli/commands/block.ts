import { z } from 'zod';
import type { Block } from '../../contract/blocks.ts';
import { isoDate, type Money } from '../../contract/operation.ts';
import { type Catalogue, printJson, withCatalogue } from '../catalogue.ts';
import { type Command, readArguments } from '../command.ts';
import { misuse, unknownVerb } from '../failure.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';

const ADD =
  'block add PREFIX [--label TEXT] [--note TEXT] [--bought-on DATE] [--cost AMOUNT] [--currency CODE]';
const LIST = 'block list [--as-of DATE]';

/** Decimal places of a currency's minor unit (ISO 4217, as the runtime's Unicode data give them). */
function minorDigits(currency: string): number {
  const format = new Intl.NumberFormat('en', { style: 'currency', currency });
  return format.resolvedOptions().maximumFractionDigits ?? 2;
}

/** '250' or '250.00' of a currency in its minor units, without passing through a fraction. */
function costOf(amount: string, currency: string): Money {
  if (!/^[A-Z]{3}$/.test(currency))
    throw misuse('Write the currency as three capital letters, for example EUR', ADD);
  const digits = minorDigits(currency);
  const [, whole = '', fraction = ''] = /^(\d{1,12})(?:\.(\d+))?$/.exec(amount) ?? [];
  if (whole === '' || fraction.length > digits) {
    throw misuse(
      `Write the cost in ${currency} as digits with a point, for example ${(250).toFixed(digits)}`,
      ADD,
    );
  }
  return { amountMinor: Number(whole + fraction.padEnd(digits, '0')), currency };
}

async function add(args: string[], io: Io): Promise<number> {
  const shape = {
    label: z.string().optional(),
    note: z.string().optional(),
    'bought-on': isoDate.optional(),
    cost: z.string().optional(),
    currency: z.string().optional(),
  };
  const { flags, words } = readArguments(args, ADD, shape, { least: 1, most: 1 });
  const [prefix = ''] = words;
  const given = Object.entries({ label: flags.label, note: flags.note, boughtOn: flags['bought-on'] });
  const facts = Object.fromEntries(given.filter(([, value]) => value !== undefined));
  const costIn = ({ call }: Catalogue): { cost?: Money } => {
    if (flags.cost === undefined) return {};
    return { cost: costOf(flags.cost, flags.currency ?? call('settings.get', {}).currency) };
  };
  await withCatalogue(flags, io, 'write', (catalogue) => {
    const block = catalogue.call('blocks.add', { prefix, ...facts, ...costIn(catalogue) });
    if (flags.json) return printJson(io, block);
    io.out(
      `Recorded ${block.hyphenatedPrefix} (${block.agency}): ${block.capacity.toLocaleString('en')} numbers from ${block.first} to ${block.last}.`,
    );
  });
  return 0;
}

function row(block: Block): string[] {
  const { free, reserved, assigned, spent } = block.counts;
  const numbers = [block.capacity, free, reserved, assigned, spent].map((count) =>
    count.toLocaleString('en'),
  );
  return [block.hyphenatedPrefix, block.label, ...numbers, block.nextFree ?? 'none', block.boughtOn ?? ''];
}

async function list(args: string[], io: Io): Promise<number> {
  const { flags } = readArguments(args, LIST, { 'as-of': isoDate.optional() }, { least: 0, most: 0 });
  await withCatalogue(flags, io, 'read', ({ call }) => {
    const asOf = flags['as-of'];
    const answer = call('blocks.list', asOf === undefined ? {} : { asOf });
    if (flags.json) return printJson(io, answer);
    if (answer.blocks.length === 0) {
      return io.out('No block is recorded; edition-ledger block add PREFIX records one.');
    }
    const head = [
      'Block',
      'Label',
      'Holds',
      'Free',
      'Reserved',
      'Assigned',
      'Spent',
      'Next free',
      'Bought on',
    ];
    io.out(table(head, answer.blocks.map(row)));
  });
  return 0;
}

export const block: Command = {
  name: 'block',
  summary: 'Record an owned block of ISBNs, or list the blocks with what is left.',
  forms: [ADD, LIST],
  options: [
    ['--label, --note TEXT', 'what the block is called, and anything else about it'],
    ['--bought-on DATE', 'the day it was bought'],
    ['--cost AMOUNT', 'what it cost, for example 250.00, in --currency or the catalogue’s own'],
    ['--as-of DATE', 'the blocks as they stood at the end of a past day'],
  ],
  async run([verb, ...args], io) {
    if (verb === 'add') return add(args, io);
    if (verb === 'list') return list(args, io);
    throw misuse(unknownVerb('block', verb), `${ADD} | list`);
  },
};
