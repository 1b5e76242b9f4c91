import { PageHeader } from '../../ui/index.ts';

/** The Journal screen. */
export default function JournalScreen() {
  return <PageHeader title="Journal" />;
}
