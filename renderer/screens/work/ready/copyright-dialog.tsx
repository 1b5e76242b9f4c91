import type { Edition } from '../../../../src/contract/editions.ts';
import { useQueryOf } from '../../../api.ts';
import { Button, CopyButton, Dialog, Notice, Refused, TextArea } from '../../../ui/index.ts';
import { fullName } from '../parts/edition-names.ts';
import './ready.css';

/** The block for the back of the title page of each format, ready to be copied. */
export function CopyrightDialog({ edition, onClose }: { edition: Edition; onClose: () => void }) {
  const page = useQueryOf('editions.copyrightPage', { editionId: edition.id });
  const { data } = page;
  return (
    <Dialog
      open
      onClose={onClose}
      title={`Copyright page of ${fullName(edition)}`}
      width="wide"
      footer={<Button onClick={onClose}>Close</Button>}
    >
      <div className="stack">
        <p className="soft">
          The same block for every format; each begins with its own number. Its wording is a text you can
          change in Settings.
        </p>
        {data && data.remarks.length > 0 ? (
          <Notice tone="care" title="Before it is printed">
            <ul className="summary-list">
              {data.remarks.map((remark) => (
                <li key={remark}>{remark}</li>
              ))}
            </ul>
          </Notice>
        ) : null}
        {data?.formats.map(({ formatId, name, text }) => (
          <div key={formatId} className="copyright-text">
            <TextArea label={name} value={text} onChange={() => {}} rows={12} readOnly />
            <CopyButton text={text} what={`The copyright page of ${name}`} label={`Copy for ${name}`} />
          </div>
        ))}
        <Refused refusal={page.error} />
      </div>
    </Dialog>
  );
}
