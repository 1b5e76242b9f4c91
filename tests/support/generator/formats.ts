import { formName, madeOf } from '../../../src/contract/terms.ts';
import { shownIsbn } from '../../../src/rules/isbn/index.ts';
import { majorUnits } from '../../../src/rules/money.ts';
import type { Row } from './ledger.ts';
import { ASKED, type Channel, type Press } from './press.ts';
import { between, dayNumber, oneOf, workday } from './words.ts';

/** A work while the press lives, with its people and forms. */
export interface LivingWork {
  id: number;
  title: string;
  people: { role: string; name: string }[];
  forms: readonly string[];
}

interface LivingListing {
  row: Row;
  channel: Channel;
}

export interface LivingFormat {
  row: Row;
  number: Row | null;
  prices: Row[];
  listings: LivingListing[];
}

/** What a form costs, in minor units from and to, and what it is like. */
const FORMS: Record<string, { price: [number, number]; fields: Row }> = {
  BC: { price: [1099, 1999], fields: { trim_width_um: 129_000, trim_height_um: 198_000, finish: 'matte' } },
  BB: {
    price: [2199, 3499],
    fields: { trim_width_um: 156_000, trim_height_um: 234_000, case_kind: 'jacket' },
  },
  ED: { price: [499, 999], fields: { form_detail: 'E101' } },
  AJ: { price: [1499, 2499], fields: { form_detail: 'A103' } },
};

/** 'Paperback' */
export const nameOf = ({ row }: LivingFormat) =>
  formName({
    form: String(row.form),
    formDetail: row.form_detail === null ? null : String(row.form_detail),
    caseKind: row.case_kind === null ? null : String(row.case_kind),
  });

/** Adds a format with its prices, then its three listings. */
export function addFormat(
  press: Press,
  work: LivingWork,
  edition: { id: number; day: string; length: number },
  form: string,
): LivingFormat {
  const { price, fields } = FORMS[form] ?? { price: [999, 999], fields: {} };
  const made = madeOf(form);
  press.command('formats.create');
  const print = { pages: edition.length, interior_colour: 'black', paper: 'cream 80 gsm' };
  const row = press.add(
    'format',
    {
      ...(made === 'print' ? print : {}),
      ...(made === 'audio' ? { duration_minutes: edition.length * 2 } : {}),
      ...fields,
      edition_id: edition.id,
      form,
      publication_date: edition.day,
      on_sale_date: edition.day,
      planned_on: press.today,
    },
    work.id,
  );
  const amount = between(press.dice, ...price);
  const prices = ['EUR', 'GBP'].map((currency, index) =>
    press.add(
      'format_price',
      { format_id: row.id ?? null, currency, amount_minor: Math.round(amount * (1 - index / 10)) },
      work.id,
    ),
  );
  const listings = press.channelsFor(made).map((channel) => {
    press.command('listings.create');
    const cost = made === 'print' && channel.proof !== 'none' ? between(press.dice, 210, 340) : null;
    const listing = press.add(
      'listing',
      {
        format_id: row.id ?? null,
        channel_id: channel.id,
        discount_bp: channel.discount,
        returns: channel.returns,
        print_cost_minor: cost,
        print_cost_currency: cost === null ? null : 'EUR',
      },
      work.id,
    );
    return { row: listing, channel };
  });
  return { row, number: null, prices, listings };
}

/** The sheet that a channel is sent, as the program words it. */
function sheetOf(work: LivingWork, format: LivingFormat): string {
  const isbn13 = String(format.number?.isbn13);
  const items = [
    { of: 'isbn', label: 'ISBN', value: shownIsbn(isbn13), is: isbn13 },
    { of: 'isbn', label: 'ISBN without hyphens', value: isbn13, is: isbn13 },
    { of: 'title', label: 'Title', value: work.title, is: work.title },
    ...format.prices.map(({ currency, amount_minor, tax }) => ({
      of: 'prices',
      label: `Price in ${currency}`,
      value: majorUnits(Number(amount_minor), String(currency)),
      is: `${currency} ${amount_minor} ${tax}`,
    })),
  ];
  return JSON.stringify({ asked: ASKED, items });
}

/** Tells a channel what is recorded now; `stepId` where that happens with the step just taken. */
export function submit(
  press: Press,
  work: LivingWork,
  format: LivingFormat,
  listing: LivingListing,
  stepId: number | null,
) {
  const on_date = press.today;
  press.add(
    'submission',
    {
      listing_id: listing.row.id ?? null,
      step_id: stepId,
      on_date,
      taken_on: on_date,
      sheet: sheetOf(work, format),
    },
    work.id,
  );
}

/** Takes a step with a listing, as part of the command that is under way. */
export function step(
  press: Press,
  work: LivingWork,
  format: LivingFormat,
  listing: LivingListing,
  to: string,
): void {
  const { row } = listing;
  const on = press.today;
  const id = row.id ?? null;
  const taken = press.add(
    'listing_step',
    { listing_id: id, from_standing: row.standing ?? null, to_standing: to, on_date: on },
    work.id,
  );
  const firsts = {
    ...(to === 'sent' ? { first_sent_on: row.first_sent_on ?? on } : {}),
    ...(to === 'cleared' ? { first_cleared_on: row.first_cleared_on ?? on } : {}),
  };
  press.ledger.change('listing', row, { standing: to, last_step_on: on, ...firsts }, work.id);
  if (to === 'sent') submit(press, work, format, listing, Number(taken.id));
}

/** Whether a format has ended, by where its listings stand. */
export function hasEnded({ row, listings }: LivingFormat): boolean {
  return row.cancelled_on !== null || listings.every((listing) => listing.row.standing === 'gone');
}

/** Brings a listing from its submission to its day of sale; a few are refused first and sent again. */
export function bringOut(
  press: Press,
  work: LivingWork,
  format: LivingFormat,
  listing: LivingListing,
  day: number,
): void {
  const { channel, row } = listing;
  const move = (to: string, operation = 'listings.move') => {
    press.command(operation);
    step(press, work, format, listing, to);
  };
  const refused = press.dice() < 0.01;
  const proof = workday(day - between(press.dice, 24, 32));
  if (refused) press.on(proof, () => move('unsent'));
  if (refused) press.on(proof + 1, () => move('sent'));
  press.on(refused ? proof + 2 : proof, () => move('proof'));
  press.on(workday(day - between(press.dice, 12, 18)), () => {
    move('cleared', channel.proof === 'none' ? 'listings.move' : 'proofs.record');
    if (channel.proof === 'none') return;
    const round = {
      listing_id: row.id ?? null,
      on_date: press.today,
      proof: channel.proof,
      outcome: 'clear for sale',
    };
    press.add('proof_round', round, work.id);
  });
  press.on(day, () => move('selling'));
}

/** Gives a format another price once or twice in its life, and tells the channels, but for a few that are forgotten. */
export function changePrice(press: Press, work: LivingWork, format: LivingFormat, after: number): void {
  press.on(after, () => {
    if (hasEnded(format) || format.listings.some(({ row }) => row.standing !== 'selling')) return;
    press.command('formats.update');
    const more = between(press.dice, 1, 3) * 100;
    for (const price of format.prices)
      press.ledger.change(
        'format_price',
        price,
        { amount_minor: Number(price.amount_minor) + more },
        work.id,
      );
    for (const listing of format.listings) {
      if (press.dice() < 0.02) continue;
      press.command('submissions.record');
      submit(press, work, format, listing, null);
    }
    if (press.dice() < 0.5)
      changePrice(press, work, format, dayNumber(press.today) + between(press.dice, 300, 1500));
  });
}

/** Gives a format up before it was sent: its number is spent in the same breath. */
export function cancel(press: Press, work: LivingWork, format: LivingFormat): void {
  press.command('formats.cancel');
  const reason = oneOf(press.dice, ['Too long for this form', 'No demand', 'Rights not cleared']);
  press.ledger.change('format', format.row, { cancelled_on: press.today, cancel_reason: reason }, work.id);
  if (format.number)
    press.ledger.change('number', format.number, { spent_on: press.today, spent_reason: reason }, work.id);
}
