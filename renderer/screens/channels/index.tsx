import { useEffect, useRef, useState } from 'react';
import { Route, Switch } from 'wouter';
import { useQueryOf } from '../../api.ts';
import { useAsOf, useQueryParam } from '../../location.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, EmptyState, PageHeader, Refused } from '../../ui/index.ts';
import { AddChannelDialog, EditChannelDialog } from './channel-dialog.tsx';
import { ChannelTable } from './channel-table.tsx';
import './channels.css';
import { ListingsPage } from './listings/listings-page.tsx';
import { ReportPage } from './report/report-page.tsx';

function NoChannel({ readOnly, onAdd }: { readOnly: string | undefined; onAdd: () => void }) {
  return (
    <EmptyState
      title="No channel yet"
      action={
        <Button kind="primary" disabled={readOnly !== undefined} reason={readOnly} onClick={onAdd}>
          Add your first channel
        </Button>
      }
    >
      A channel is any place where your formats are listed or sold: a printer that also sells, a wholesaler,
      an e-book shop, a bookshop round the corner, your own website. Add each one once, with its days and
      rules; plans, requests and the audit go by them.
    </EmptyState>
  );
}

/** What is said under the heading: how many there are, and that they are shown as they stand today. */
function ledeOf(count: number, open: number, asOf: string | undefined): string | undefined {
  if (count === 0) return undefined;
  const counted = open === count ? `${count} channels` : `${count} channels, ${open} of them open`;
  return `${count === 1 ? 'One channel' : counted}${asOf === undefined ? '' : ', as they stand today'}`;
}

/** A removed channel takes its row and the focus with it; the heading gets the focus then. */
function useFocusAfterRemoval(count: number): void {
  const before = useRef(count);
  useEffect(() => {
    if (count < before.current && document.activeElement === document.body)
      document.querySelector<HTMLElement>('main h1')?.focus();
    before.current = count;
  }, [count]);
}

/** Every place where formats are listed or sold. */
function ChannelsPage() {
  const { asOf } = useAsOf();
  const readOnly = useReadOnly();
  const list = useQueryOf('channels.list', {});
  const [adding, setAdding] = useState(false);
  const [opened, setOpened] = useQueryParam('channel');
  const channels = list.data?.channels ?? [];
  const edited = channels.find((channel) => String(channel.id) === opened);
  useFocusAfterRemoval(channels.length);
  const isOpen = channels.filter((channel) => channel.closedOn === null).length;
  return (
    <>
      <PageHeader
        title="Channels"
        lede={ledeOf(channels.length, isOpen, asOf)}
        actions={
          channels.length === 0 ? undefined : (
            <Button
              kind="primary"
              disabled={readOnly !== undefined}
              reason={readOnly}
              onClick={() => setAdding(true)}
            >
              Add a channel…
            </Button>
          )
        }
      />
      <Refused refusal={list.error} />
      {list.data && channels.length === 0 ? (
        <NoChannel readOnly={readOnly} onAdd={() => setAdding(true)} />
      ) : null}
      {channels.length > 0 ? (
        <ChannelTable channels={channels} onOpen={(channel) => setOpened(String(channel.id))} />
      ) : null}
      {adding ? <AddChannelDialog onClose={() => setAdding(false)} /> : null}
      {edited ? <EditChannelDialog key={edited.id} channel={edited} onClose={() => setOpened('')} /> : null}
    </>
  );
}

/** The Channels screen, and the listings and reports of each channel. */
export default function ChannelsScreen() {
  return (
    <Switch>
      <Route path="/channels/:id/listings" component={ListingsPage} />
      <Route path="/channels/:id/reports" component={ReportPage} />
      <Route component={ChannelsPage} />
    </Switch>
  );
}
