import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { InputOf } from '../../src/contract/index.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

const TODAY = '2026-03-02';
let catalogue: TestCatalogue;
let edition: number;
let format: number;
let listing: number;

beforeEach(() => {
  catalogue = openTestCatalogue(TODAY);
  catalogue.call('blocks.add', { prefix: '979-8-969999' });
  edition = catalogue.call('works.create', { title: 'The Salt Almanac' }).editionId;
  format = catalogue.call('formats.create', {
    editionId: edition,
    form: 'BC',
    prices: [{ currency: 'GBP', amountMinor: 999 }],
  }).formatId;
  catalogue.call('numbers.assign', { formatId: format });
  const { channelId } = catalogue.call('channels.create', { name: 'Printworks Direct', leadDays: 3 });
  listing = catalogue.call('listings.create', {
    formatId: format,
    channelId,
    discountBp: 4000,
    printCost: { amountMinor: 310, currency: 'GBP' },
  }).listingId;
});
afterEach(() => catalogue.close());

type Round = Partial<InputOf<'proofs.record'>>;
const round = (outcome: InputOf<'proofs.record'>['outcome'], more: Round = {}) =>
  catalogue.call('proofs.record', { listingId: listing, proof: 'electronic', outcome, ...more });
const refused = (outcome: InputOf<'proofs.record'>['outcome'], more: Round = {}) =>
  catalogue.refusal('proofs.record', { listingId: listing, proof: 'electronic', outcome, ...more });
const move = (to: 'sent' | 'proof' | 'cleared' | 'selling' | 'gone') =>
  catalogue.call('listings.move', { id: listing, to });
const stored = () => catalogue.call('works.get', { id: 1 }).editions[0]?.formats[0]?.listings[0];
const open = () => catalogue.call('tasks.list', {}).tasks;
const kinds = () =>
  open().map(({ kind, dueOn, planId, standing }) => [kind, dueOn, planId !== null, standing]);
const finish = (kind: string) => {
  const task = open().find((one) => one.kind === kind);
  if (!task) throw new Error(`No open task ${kind}.`);
  return catalogue.call('tasks.finish', { id: task.id });
};

describe('a proof round', () => {
  it('that needs a new file sends the listing back, and its new tasks bring it to sale again', () => {
    catalogue.call('plans.release', { editionId: edition, day: '2026-03-20' });
    for (const task of open().filter((one) => one.dueOn < '2026-03-20' && one.kind !== 'approve'))
      if (task.kind !== 'check-page') catalogue.call('tasks.finish', { id: task.id });
    expect(stored()?.standing).toBe('proof');
    const answer = round('new file needed', { files: ['cover'], note: 'spine too narrow' });
    expect(answer).toMatchObject({ standing: 'unsent', tasks: 3, late: null });
    expect(kinds()).toEqual([
      ['make-cover', '2026-03-05', true, 'open'],
      ['submit', '2026-03-06', true, 'open'],
      ['check-proof', '2026-03-10', true, 'open'],
      ['approve', '2026-03-19', true, 'open'],
      ['on-sale', '2026-03-20', true, 'open'],
      ['check-page', '2026-03-23', true, 'open'],
    ]);
    expect(catalogue.refusal('editions.update', { id: edition, title: 'Other' }).code).toBe('FIELD_LOCKED');
    finish('make-cover');
    expect(finish('submit').moved).toEqual([{ listingId: listing, standing: 'sent' }]);
    expect(catalogue.call('submissions.sheet', { listingId: listing }).submissions).toHaveLength(2);
    finish('check-proof');
    finish('approve');
    finish('on-sale');
    expect(stored()?.standing).toBe('selling');
    expect(catalogue.call('proofs.list', { editionId: edition }).rounds).toMatchObject([
      {
        listingId: listing,
        on: TODAY,
        proof: 'electronic',
        outcome: 'new file needed',
        note: 'spine too narrow',
      },
    ]);
  });

  it('says when the day of sale can no longer be kept, and which plan to move', () => {
    const { planId } = catalogue.call('plans.release', { editionId: edition, day: '2026-03-06' });
    move('proof');
    const { late } = round('new file needed');
    expect(late).toEqual({ saleDay: '2026-03-06', earliest: '2026-03-11', planId });
    const [sale] = open().filter((task) => task.kind === 'on-sale');
    for (const task of open())
      if (task.kind !== 'check-page') expect(task.dueOn <= (sale?.dueOn ?? '')).toBe(true);
    catalogue.call('plans.redate', { planId, day: '2026-03-11' });
    expect(open().find((task) => task.kind === 'on-sale')?.dueOn).toBe('2026-03-11');
  });

  it('that clears own orders first dates the sale later, on the listing and in its task', () => {
    move('sent');
    expect(refused('clear for own orders').field).toBe('saleDay');
    expect(refused('clear for own orders', { saleDay: TODAY }).field).toBe('saleDay');
    expect(round('clear for own orders', { proof: 'physical', saleDay: '2026-04-15' })).toMatchObject({
      standing: 'cleared',
      tasks: 2,
    });
    expect(stored()).toMatchObject({ standing: 'cleared', onSaleDate: '2026-04-15' });
    expect(kinds()).toEqual([
      ['order-copies', '2026-03-03', false, 'open'],
      ['on-sale', '2026-04-15', false, 'open'],
    ]);
    expect(refused('clear for own orders', { saleDay: '2026-05-01' }).message).toContain('cleared already');
    catalogue.setToday('2026-03-09');
    expect(round('clear for sale')).toMatchObject({ standing: 'cleared', tasks: 0 });
    catalogue.setToday('2026-04-15');
    finish('order-copies');
    expect(finish('on-sale').moved).toEqual([{ listingId: listing, standing: 'selling' }]);
  });

  it('that finds an error of the channel waits for it, and the next round ends the wait', () => {
    move('proof');
    expect(round('channel error', { answerBy: '2026-03-05', note: 'bound upside down' })).toMatchObject({
      standing: 'proof',
      tasks: 3,
    });
    expect(kinds()).toEqual([
      ['await-mend', '2026-03-05', false, 'waiting'],
      ['chase-mend', '2026-03-06', false, 'open'],
      ['check-proof', '2026-03-06', false, 'open'],
    ]);
    expect(open()[0]?.waitingFor).toBe('Printworks Direct');
    catalogue.setToday('2026-03-06');
    expect(round('clear for sale').standing).toBe('cleared');
    expect(open()).toEqual([]);
  });

  it('fits only where the listing stands, on a day that has come, with files that the format has', () => {
    expect(refused('clear for sale').message).toContain('it is not sent');
    move('proof');
    expect(refused('clear for sale', { on: '2026-03-01' }).field).toBe('on');
    expect(refused('clear for sale', { on: '2026-03-03' }).field).toBe('on');
    expect(refused('new file needed', { files: ['audio'] }).field).toBe('files');
    move('selling');
    expect(refused('new file needed').message).toContain('it is or was on sale');
  });
});

describe('costs', () => {
  it('of a round and of a listing are summed by currency, beside what a copy earns', () => {
    move('proof');
    round('new file needed', {
      costs: [
        { kind: 'revised file', amount: { amountMinor: 2500, currency: 'GBP' } },
        { kind: 'upload', amount: { amountMinor: 0, currency: 'GBP' }, voucher: 'FREE-UPLOAD-7' },
      ],
    });
    const { costId } = catalogue.call('costs.add', {
      formatId: format,
      listingId: listing,
      kind: 'proof copy',
      amount: { amountMinor: 612, currency: 'EUR' },
    });
    const { costs, totals, vouchers, earnings } = catalogue.call('costs.ofEdition', { editionId: edition });
    expect(totals).toEqual([
      { currency: 'GBP', amountMinor: 2500 },
      { currency: 'EUR', amountMinor: 612 },
    ]);
    expect(vouchers).toBe(1);
    expect(costs.map((cost) => [cost.kind, cost.roundId !== null, cost.locked])).toEqual([
      ['revised file', true, false],
      ['upload', true, false],
      ['proof copy', false, false],
    ]);
    // 9.99 × 0.6 − 3.10 = 2.894 a copy; 25.00 ÷ 2.894 = 8.64, so nine copies.
    expect(earnings).toMatchObject([
      { listMinor: 999, keptMinor: 289, copiesToCover: 9, printCostMinor: 310 },
    ]);
    expect(catalogue.call('costs.update', { id: costId, note: 'with post' }).changed).toEqual(['note']);
    catalogue.call('costs.remove', { id: costId });
    expect(catalogue.call('costs.ofEdition', { editionId: edition }).totals).toHaveLength(1);
  });

  it('of a retired format are history, but for bills that came later', () => {
    const amount = { amountMinor: 2500, currency: 'GBP' };
    move('proof');
    round('clear for sale', { costs: [{ kind: 'upload', amount }] });
    move('gone');
    const add = { formatId: format, kind: 'other' as const, amount };
    expect(catalogue.refusal('costs.add', add).code).toBe('FIELD_LOCKED');
    expect(catalogue.refusal('costs.update', { id: 1, note: 'x' }).code).toBe('FIELD_LOCKED');
    expect(catalogue.refusal('costs.remove', { id: 1 }).code).toBe('FIELD_LOCKED');
    catalogue.setToday('2026-03-10');
    const { costId } = catalogue.call('costs.add', add);
    expect(catalogue.refusal('costs.update', { id: costId, on: TODAY }).code).toBe('FIELD_LOCKED');
    catalogue.call('costs.update', { id: costId, note: 'a late bill' });
    const raw = new Database(catalogue.file);
    for (const sql of [
      'UPDATE cost SET amount_minor = 1 WHERE id = 1',
      "UPDATE cost SET note = 'x' WHERE id = 1",
      'DELETE FROM cost WHERE id = 1',
      `UPDATE cost SET on_date = '${TODAY}' WHERE id = ${costId}`,
      `UPDATE cost SET listing_id = ${listing} WHERE id = ${costId}`,
      `INSERT INTO cost (format_id, kind, amount_minor, currency, on_date) VALUES (${format}, 'other', 1, 'GBP', '${TODAY}')`,
      'UPDATE proof_round SET note = 1',
      'DELETE FROM proof_round',
      `INSERT INTO proof_round (listing_id, on_date, proof, outcome) VALUES (${listing}, '2026-03-10', 'electronic', 'clear for sale')`,
    ])
      expect(() => raw.exec(sql), sql).toThrow(/FIELD_LOCKED|STEP_REFUSED|IN_USE/);
    raw.close();
  });

  it('belong to a listing of their own format', () => {
    const other = catalogue.call('formats.create', { editionId: edition, form: 'ED' }).formatId;
    const amount = { amountMinor: 1, currency: 'GBP' };
    expect(
      catalogue.refusal('costs.add', { formatId: other, listingId: listing, kind: 'other', amount }).field,
    ).toBe('listingId');
    const raw = new Database(catalogue.file);
    expect(() =>
      raw.exec(
        `INSERT INTO cost (format_id, listing_id, kind, amount_minor, currency, on_date) VALUES (${other}, ${listing}, 'other', 1, 'GBP', '${TODAY}')`,
      ),
    ).toThrow('BAD_INPUT');
    raw.close();
  });
});
