import { useState } from 'react';
import type { Format } from '../../../../src/contract/formats.ts';
import type { InputOf, OutputOf } from '../../../../src/contract/index.ts';
import type { PriceEffect } from '../../../../src/contract/money.ts';
import type { Money } from '../../../../src/contract/operation.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { formatMoney } from '../../../lib/money.ts';
import { type Column, DateInput, MoneyInput, Notice, Select, Table } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { counted } from '../parts/names.ts';
import { type ErrorOf, errorsOf } from '../parts/refusals.ts';
import { useWork } from '../parts/work-context.tsx';
import { amount, CAUTION } from './words.ts';

export type PricedFormat = Pick<Format, 'id' | 'name' | 'prices' | 'standing'>;

interface Draft {
  formatId: number;
  /** By currency; undefined while unreadable. */
  prices: Record<string, Money | undefined>;
  from: string;
}

/** What to ask for: the prices that differ, or undefined while there is nothing to ask. */
function inputOf(
  { formatId, prices, from }: Draft,
  format: PricedFormat,
): InputOf<'prices.preview'> | undefined {
  const wanted = format.prices.flatMap(({ currency, amountMinor }) => {
    const now = prices[currency];
    return now && now.amountMinor !== amountMinor ? [now] : [];
  });
  if (wanted.length === 0) return undefined;
  return { formatId, prices: wanted, ...(from === '' ? {} : { from }) };
}

const draftOf = (format: PricedFormat | undefined): Draft => ({
  formatId: format?.id ?? 0,
  prices: Object.fromEntries(
    (format?.prices ?? []).map(({ currency, amountMinor }) => [currency, { currency, amountMinor }]),
  ),
  from: '',
});

/** Never asked for: stands in while nothing is. */
const NOTHING: InputOf<'prices.preview'> = { formatId: 1, prices: [{ currency: 'EUR', amountMinor: 0 }] };

/** What is asked for, what it would do, and how it is carried out. */
function usePriceChange(formats: readonly PricedFormat[], onClose: () => void) {
  const [draft, setDraft] = useState(() => draftOf(formats[0]));
  const command = useCommand('prices.change');
  const format = formats.find(({ id }) => id === draft.formatId);
  const input = format && inputOf(draft, format);
  const preview = useQueryOf('prices.preview', input ?? NOTHING, {
    keep: true,
    enabled: input !== undefined,
  });
  const save = async () => {
    if (!input) return;
    const tasks = preview.data?.tasks.length ?? 0;
    const told = tasks === 0 ? '' : ` ${counted(tasks, 'task')} to tell the channels: see the Agenda.`;
    if ((await command.run(input, `The price is changed.${told}`)).ok) onClose();
  };
  const unfit = input ? (preview.error ?? undefined) : undefined;
  return {
    draft,
    setDraft,
    format,
    save,
    asked: input !== undefined,
    blocked: input ? unfit?.message : 'Write another price first.',
    pending: command.pending,
    refusal: command.refusal ?? unfit,
    effects: input && !preview.error ? preview.data : undefined,
  };
}

/** New prices of a format: what they do on every channel, and then the change with its tasks, in one. */
export function PriceDialog({ formats, onClose }: { formats: readonly PricedFormat[]; onClose: () => void }) {
  const { draft, setDraft, format, effects, ...change } = usePriceChange(formats, onClose);
  if (!format) return null;
  return (
    <FormDialog
      title="Change a price"
      width="wide"
      submit="Change the price"
      blocked={change.blocked}
      onClose={onClose}
      onSubmit={() => void change.save()}
      pending={change.pending}
      refusal={change.refusal}
      fields={['prices', 'from']}
      dirty={change.asked}
    >
      <Select
        label="Format"
        value={String(format.id)}
        onChange={(id) => setDraft(draftOf(formats.find((one) => String(one.id) === id)))}
        choices={formats.map(({ id, name }) => ({ value: String(id), label: name }))}
        name="formatId"
      />
      <PriceFields format={format} draft={draft} onChange={setDraft} errorOf={errorsOf(change.refusal)} />
      {effects ? <Effects preview={effects} /> : null}
    </FormDialog>
  );
}

interface PriceFieldsProps {
  format: PricedFormat;
  draft: Draft;
  onChange: (draft: Draft) => void;
  errorOf: ErrorOf;
}

function PriceFields({ format, draft, onChange, errorOf }: PriceFieldsProps) {
  const { today } = useWork();
  return (
    <div className="columns">
      {format.prices.map(({ currency, amountMinor }) => (
        <MoneyInput
          key={`${format.id} ${currency}`}
          label={`New price in ${currency}`}
          currencies={[currency]}
          value={draft.prices[currency]}
          onChange={(money) => onChange({ ...draft, prices: { ...draft.prices, [currency]: money } })}
          help={`Now ${formatMoney(amountMinor, currency)}.`}
          error={errorOf('prices')}
          name={`price-${currency}`}
        />
      ))}
      <DateInput
        label="To hold from"
        value={draft.from}
        min={today}
        onChange={(from) => onChange({ ...draft, from })}
        help="Left empty, the first day that every channel can keep."
        error={errorOf('from')}
        name="from"
      />
    </div>
  );
}

function Way({ row }: { row: PriceEffect }) {
  if (row.way === 'with the sheet') return <>not sent yet: goes along with its sheet</>;
  if (row.way === 'over') return <span className="soft">{row.standing}: no longer matters</span>;
  const days = row.days === 0 ? 'at once' : `${counted(row.days ?? 0, 'day')} from today`;
  return (
    <>
      has to be asked; by its lead time from {row.earliestOn ? formatDay(row.earliestOn) : ''}
      <span className="soft money-aside">{days}</span>
    </>
  );
}

const EFFECTS: readonly Column<PriceEffect>[] = [
  { key: 'channel', header: 'Channel', cell: (row) => row.channelName },
  {
    key: 'price',
    header: 'Price now → then',
    nowrap: true,
    cell: (row) =>
      `${formatMoney(row.listNowMinor, row.currency)} → ${formatMoney(row.listThenMinor, row.currency)}`,
  },
  {
    key: 'kept',
    header: 'A copy keeps now → then',
    cell: (row) => (
      <>
        {amount(row.keptNowMinor, row.currency)} → {amount(row.keptThenMinor, row.currency)}
        {row.belowCost ? <span className="money-loss">sold at a loss</span> : null}
        {row.keptThenMinor === null ? <span className="soft money-aside">{row.printCost.why}</span> : null}
      </>
    ),
  },
  { key: 'way', header: 'How it gets there', cell: (row) => <Way row={row} /> },
];

/** What the new prices do, before anything is changed. */
function Effects({ preview }: { preview: OutputOf<'prices.preview'> }) {
  const { rows, notes, tasks, from } = preview;
  return (
    <>
      {rows.length > 0 ? (
        <Table
          caption="What it does on every channel"
          captionShown
          columns={EFFECTS}
          rows={rows}
          rowKey={(row) => `${row.listingId} ${row.currency}`}
        />
      ) : (
        <p className="soft">It is not listed anywhere yet; the record alone changes.</p>
      )}
      {notes.length > 0 ? (
        <Notice tone="care" title="Before you change it">
          <ul>
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      <p>
        The record holds the new price from now on.{' '}
        {tasks.length === 0
          ? 'No channel has to be told.'
          : `The Agenda gets ${counted(tasks.length, 'task')}, so that every channel shows it from ${formatDay(from)}:`}
      </p>
      {tasks.length > 0 ? (
        <ul className="money-list">
          {tasks.map(({ listingId, title, dueOn }) => (
            <li key={listingId}>
              {title} <span className="soft">(due {formatDay(dueOn)})</span>
            </li>
          ))}
        </ul>
      ) : null}
      <p className="soft">{CAUTION.title}</p>
    </>
  );
}
