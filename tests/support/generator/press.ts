import { blockNumber } from '../../../src/rules/isbn/index.ts';
import type { Ledger, Row } from './ledger.ts';
import { type Dice, dayNumber, isoDay } from './words.ts';

/** Channels are invented and generic; `takes` says which made forms are listed there. */
const CHANNELS = [
  { name: 'Printworks Direct', kind: 'print', proof: 'physical', discount: 4000, returns: 'N', removal: 5 },
  {
    name: 'Broadside Wholesale',
    kind: 'print',
    proof: 'electronic',
    discount: 5500,
    returns: 'N',
    removal: 10,
  },
  { name: 'Lanternshelf', kind: 'e-book', proof: 'electronic', discount: 3000, returns: null, removal: 3 },
  { name: 'Tideline Audio', kind: 'audio', proof: 'electronic', discount: 3000, returns: null, removal: 3 },
  { name: 'Nettlewick Bookshop', kind: 'any', proof: 'none', discount: 3500, returns: 'N', removal: 2 },
  { name: 'Harbour Catalogue', kind: 'any', proof: 'none', discount: 3000, returns: null, removal: 3 },
] as const;
export type Channel = (typeof CHANNELS)[number] & { id: number };

/** What the channels ask for. */
export const ASKED = ['isbn', 'title', 'prices'] as const;

/** The three channels that a form is listed on. */
const LISTED: Record<string, readonly number[]> = { print: [1, 2, 5], 'e-book': [3, 5, 6], audio: [4, 5, 6] };

/** Registrant elements at the top of their ranges within 979-8, by how many digits they have. */
const REGISTRANTS: readonly (readonly [digits: number, highest: number])[] = [
  [6, 969_999],
  [5, 90_999],
  [4, 8_849],
  [3, 239],
];

interface Block {
  id: number;
  digits: string;
  publicationDigits: number;
}

/**
 * A press as it goes through its days: what is to happen is put on a day, and happens once that day is reached. The
 * numbers are invented and never printed.
 */
export class Press {
  readonly ledger: Ledger;
  readonly dice: Dice;
  readonly channels: readonly Channel[];
  readonly #days = new Map<number, (() => void)[]>();
  readonly #blocks: Block[] = [];
  #taken = 0;
  #today = '';

  constructor(ledger: Ledger, dice: Dice, formats: number, since: string) {
    this.ledger = ledger;
    this.dice = dice;
    this.channels = CHANNELS.map((channel, index) => ({ ...channel, id: index + 1 }));
    this.#today = since;
    this.#found(formats);
  }

  /** The day it is. */
  get today(): string {
    return this.#today;
  }

  /** Settings, channels and blocks, before the first work. */
  #found(formats: number): void {
    this.command('settings.update');
    const settings = {
      catalogueName: 'Halyard & Fen (invented)',
      publisher: 'Halyard & Fen',
      imprint: 'Halyard & Fen',
      currency: 'EUR',
      demo: true,
    };
    for (const [name, value] of Object.entries(settings))
      this.add('setting', { name, value: JSON.stringify(value) }, null);
    for (const channel of this.channels) {
      this.command('channels.create');
      const { name, kind, proof, discount, returns, removal } = channel;
      const given = { name, kind, proof, default_discount_bp: discount, default_returns: returns };
      const contact = `titles@${name.toLowerCase().replaceAll(' ', '-')}.example`;
      this.add(
        'channel',
        { ...given, contact, removal_days: removal, lead_days: 30, sheet_items: JSON.stringify(ASKED) },
        null,
      );
    }
    const [length, highest] = REGISTRANTS.find(([digits]) => 10 ** (8 - digits) >= formats) ?? [3, 239];
    const capacity = 10 ** (8 - length);
    for (let id = 1; id <= Math.ceil(formats / capacity) + 1; id += 1) {
      this.command('blocks.add');
      const registrant = String(highest - id + 1);
      const block = {
        digits: `9798${registrant}`,
        hyphenated_prefix: `979-8-${registrant}`,
        agency: 'Invented',
      };
      const label = `Block ${id}`;
      this.add(
        'number_block',
        { ...block, label, bought_on: this.#today, cost_minor: 25_000, cost_currency: 'EUR' },
        null,
      );
      this.#blocks.push({ id, digits: block.digits, publicationDigits: 8 - length });
    }
  }

  command(operation: string): void {
    this.ledger.command(this.#today, operation);
  }

  add(table: string, row: Row, work: number | null): Row {
    return this.ledger.add(table, row, work);
  }

  /** The channels that a form made so is listed on. */
  channelsFor(made: string): Channel[] {
    return (LISTED[made] ?? []).flatMap((id) => this.channels[id - 1] ?? []);
  }

  /** Takes the next free number. */
  takeNumber(row: Row, work: number | null): Row {
    const capacity = 10 ** (this.#blocks[0]?.publicationDigits ?? 0);
    const block = this.#blocks[Math.floor(this.#taken / capacity)];
    if (!block) throw new Error('No number is free.');
    const index = this.#taken % capacity;
    this.#taken += 1;
    const isbn13 = blockNumber(block, index);
    return this.add('number', { isbn13, block_id: block.id, block_index: index, ...row }, work);
  }

  /** Puts something on a day; what would lie in the past happens today, after what is on already. */
  on(day: number, what: () => void): void {
    const due = Math.max(day, dayNumber(this.#today));
    const planned = this.#days.get(due);
    if (planned) planned.push(what);
    else this.#days.set(due, [what]);
  }

  /** Lets the days pass, up to and with the last one. */
  pass(last: string): void {
    for (let day = dayNumber(this.#today); day <= dayNumber(last); day += 1) {
      this.#today = isoDay(day);
      const planned = this.#days.get(day) ?? [];
      for (let at = 0; at < planned.length; at += 1) planned[at]?.();
      this.#days.delete(day);
    }
  }
}
