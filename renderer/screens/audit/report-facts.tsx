import { CopyButton, KeyValue } from '../../ui/index.ts';
import type { Audit } from './words.ts';

/** What a saved or printed report is known by later: its file, its days, and the seal of the journal it was made at. */
export function ReportFacts({ audit }: { audit: Audit }) {
  const seal = (
    <>
      <span className="mono audit-seal">{audit.journalHead}</span>{' '}
      <CopyButton small text={audit.journalHead} what="the seal" />
    </>
  );
  return (
    <KeyValue
      items={[
        { label: 'Catalogue', value: audit.catalogueName },
        { label: 'File', value: audit.fileName },
        { label: 'Made on', value: audit.today },
        { label: 'Speaks of', value: audit.asOf },
        { label: 'Newest seal of the journal', value: seal },
      ]}
    />
  );
}
