import { useQueryOf } from '../../../api.ts';
import { CopyButton, KeyValue, Refused, TextArea } from '../../../ui/index.ts';
import { mailAddress } from '../listing/mail-address.ts';

/** The filled-in text to a channel, to be copied or opened in the mail program. */
export function RequestPart({ listingId, kind }: { listingId: number; kind: 'removal request' | 'chase' }) {
  const request = useQueryOf('listings.requestText', { id: listingId, kind });
  if (!request.data) return <Refused refusal={request.error} />;
  const { to, subject, text } = request.data;
  const mail = mailAddress(request.data);
  return (
    <>
      <KeyValue
        items={[
          { label: 'To', value: to || 'no address is recorded for this channel' },
          { label: 'Subject', value: subject },
        ]}
      />
      <TextArea label="Text" rows={8} value={text} onChange={() => {}} readOnly />
      <div className="row">
        <CopyButton text={text} what="The text" label="Copy the text" />
        {mail ? (
          <a className="button button-plain" href={mail}>
            Open in mail program
          </a>
        ) : null}
      </div>
    </>
  );
}
