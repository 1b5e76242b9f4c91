import { useQueryOf } from '../../api.ts';
import { useAsOf } from '../../location.ts';
import { Notice, PageHeader, Tabs } from '../../ui/index.ts';
import { Commands } from './commands.tsx';
import { EntriesTable } from './entries-table.tsx';
import { JournalFilter } from './journal-filter.tsx';
import { type JournalView, useJournalTerms } from './use-journal.ts';
import './journal.css';

/** The Journal screen: every change, newest first, with what stood before and after. */
export default function JournalScreen() {
  const { asOf } = useAsOf();
  const terms = useJournalTerms();
  const entries = useQueryOf('catalogue.info', {}).data?.journalEntries;
  return (
    <>
      <PageHeader title="Journal" lede={entries === undefined ? undefined : <Lede entries={entries} />} />
      {asOf === undefined ? null : (
        <div className="journal-note">
          <Notice>The journal has no past days: it shows every change up to now.</Notice>
        </div>
      )}
      <JournalFilter terms={terms} />
      <Tabs<JournalView>
        label="Ways to show the journal"
        value={terms.view}
        onChange={terms.showAs}
        tabs={[
          { id: 'changes', label: 'By change' },
          { id: 'table', label: 'Table' },
        ]}
      >
        {terms.view === 'table' ? <EntriesTable terms={terms} /> : <Commands terms={terms} />}
      </Tabs>
    </>
  );
}

function Lede({ entries }: { entries: number }) {
  return (
    <p>
      {entries.toLocaleString()} {entries === 1 ? 'entry' : 'entries'}, never altered and never removed. Each
      is sealed with the one before it, so that any tampering shows.
    </p>
  );
}
