import { useState } from 'react';
import { useCommand, useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { Button, type Column, ConfirmDialog, Refused, Table } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';
import { CardDialog } from './card-dialog.tsx';
import type { Card } from './card-draft.ts';
import { FitShown } from './quotes-input.tsx';

type Doing = { what: 'add' } | { what: 'edit' | 'remove'; card: Card };

/** The print-cost cards of all channels: whatever edition the page is of, they are the same. */
export function CardsPart() {
  const { editable } = useWork();
  const { asOf } = useAsOf();
  const cards = useQueryOf('printCosts.list', asOf === undefined ? {} : { asOf });
  const channels = useQueryOf('channels.list', {});
  const [doing, setDoing] = useState<Doing>();
  const close = () => setDoing(undefined);
  const open = (channels.data?.channels ?? []).filter(
    ({ closedOn, kind }) => closedOn === null && kind !== 'e-book',
  );
  return (
    <div className="stack">
      <p className="soft">
        A card says what printing a copy costs on a channel: a fixed part and a part for each page. It serves
        every book of that channel it fits; a print cost typed with the terms of a listing comes before it.
      </p>
      <Refused refusal={cards.error ?? channels.error} />
      {cards.data ? <CardTable cards={cards.data.cards} editable={editable} onDo={setDoing} /> : null}
      {editable ? (
        <div>
          <Button
            onClick={() => setDoing({ what: 'add' })}
            disabled={open.length === 0}
            reason={open.length === 0 ? 'Add a channel that prints first.' : undefined}
          >
            Add a print-cost card
          </Button>
        </div>
      ) : null}
      {doing?.what === 'add' ? <CardDialog card={undefined} channels={open} onClose={close} /> : null}
      {doing?.what === 'edit' ? <CardDialog card={doing.card} channels={open} onClose={close} /> : null}
      {doing?.what === 'remove' ? <RemoveCard card={doing.card} onClose={close} /> : null}
    </div>
  );
}

interface CardTableProps {
  cards: readonly Card[];
  editable: boolean;
  onDo: (doing: Doing) => void;
}

function CardTable({ cards, editable, onDo }: CardTableProps) {
  const columns: Column<Card>[] = [
    { key: 'channel', header: 'Channel', cell: (card) => card.channelName },
    {
      key: 'books',
      header: 'For',
      cell: (card) => (
        <>
          {card.name}, {card.currency}
          {card.note === '' ? null : <span className="soft money-aside">{card.note}</span>}
        </>
      ),
    },
    {
      key: 'cost',
      header: 'Cost of a copy',
      cell: (card) => <FitShown fitted={card.fitted} currency={card.currency} />,
    },
    {
      key: 'do',
      header: 'Change',
      headerHidden: true,
      cell: (card) => (editable ? <CardButtons card={card} onDo={onDo} /> : null),
    },
  ];
  return (
    <Table
      caption="Print-cost cards"
      columns={columns}
      rows={cards}
      rowKey={(card) => card.id}
      empty={<p className="soft">No card is kept yet.</p>}
    />
  );
}

function CardButtons({ card, onDo }: { card: Card; onDo: (doing: Doing) => void }) {
  const name = `${card.channelName}, ${card.name}, ${card.currency}`;
  return (
    <span className="row">
      <Button kind="quiet" label={`Edit: ${name}`} onClick={() => onDo({ what: 'edit', card })}>
        Edit
      </Button>
      <Button kind="quiet" label={`Remove: ${name}`} onClick={() => onDo({ what: 'remove', card })}>
        Remove
      </Button>
    </span>
  );
}

function RemoveCard({ card, onClose }: { card: Card; onClose: () => void }) {
  const remove = useCommand('printCosts.remove');
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title="Remove this print-cost card?"
      confirm="Remove the card"
      danger
      pending={remove.pending}
      refusal={remove.refusal}
      onConfirm={() =>
        void remove.run({ id: card.id }, 'The card is removed.').then((answer) => answer.ok && onClose())
      }
    >
      {card.channelName}: {card.name}, {card.currency}. What listings keep is then not known where no other
      card fits and no figure is typed.
    </ConfirmDialog>
  );
}
