import type { Format } from '../../../../src/contract/formats.ts';
import type { Listing } from '../../../../src/contract/listings.ts';
import { useQueryOf } from '../../../api.ts';
import { Button, CopyButton, Dialog, KeyValue, Refused, TextArea } from '../../../ui/index.ts';
import { mailAddress } from './mail-address.ts';

export interface RequestDialogProps {
  format: Format;
  listing: Listing;
  onClose: () => void;
  /** Goes on to record that the channel was asked. */
  onAsked: (() => void) | undefined;
}

/** The text that asks a channel to stop selling, to be copied or mailed. */
export function RequestDialog({ format, listing, onClose, onAsked }: RequestDialogProps) {
  const request = useQueryOf('listings.requestText', { id: listing.id });
  const mail = request.data ? mailAddress(request.data) : undefined;
  return (
    <Dialog
      open
      onClose={onClose}
      title={`Ask ${listing.channelName} to stop selling`}
      footer={
        <>
          {request.data ? (
            <CopyButton kind="primary" text={request.data.text} what="The request text" />
          ) : null}
          {mail ? (
            <a className="button button-plain" href={mail}>
              Open in mail program
            </a>
          ) : null}
          {onAsked ? <Button onClick={onAsked}>Record that it was asked</Button> : null}
          <Button onClick={onClose}>Done</Button>
        </>
      }
    >
      {request.data ? (
        <div className="stack">
          <KeyValue
            items={[
              { label: 'To', value: request.data.to || 'no address is recorded for this channel' },
              { label: 'Subject', value: request.data.subject },
            ]}
          />
          <TextArea label="Request text" rows={12} value={request.data.text} onChange={() => {}} readOnly />
          {onAsked ? (
            <p className="soft">
              Sending the text changes nothing here. Once you asked, record it: {format.name} then stands at
              “leaving” on {listing.channelName} until it no longer shows.
            </p>
          ) : null}
        </div>
      ) : (
        <Refused refusal={request.error} />
      )}
    </Dialog>
  );
}
