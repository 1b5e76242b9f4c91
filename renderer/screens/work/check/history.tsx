import type { CheckSummary } from '../../../../src/contract/proof-checks/checks.ts';
import { formatDay } from '../../../lib/dates.ts';
import { type Column, Section, Table } from '../../../ui/index.ts';
import { countsText, FINAL_WORDS, KIND_TITLES } from './words.ts';

/** 'counts' for the check that counts, else how its file stands to the final one. */
const standing = (check: CheckSummary) =>
  check.inForce ? `counts; ${FINAL_WORDS[check.final]}` : `earlier; ${FINAL_WORDS[check.final]}`;

const COLUMNS: readonly Column<CheckSummary>[] = [
  { key: 'file', header: 'File', cell: (check) => check.fileName },
  { key: 'kind', header: 'Kind', cell: (check) => KIND_TITLES[check.kind] },
  { key: 'on', header: 'Checked on', cell: (check) => formatDay(check.checkedOn) },
  { key: 'result', header: 'Result', cell: (check) => countsText(check) },
  { key: 'open', header: 'Without a reason', cell: (check) => check.open, align: 'end' },
  { key: 'standing', header: 'Standing', cell: standing },
];

export interface HistoryProps {
  checks: readonly CheckSummary[];
  shownId: number | undefined;
  onShow: (checkId: number) => void;
}

/** Every check that was ever kept of the format, the newest first. */
export function History({ checks, shownId, onShow }: HistoryProps) {
  return (
    <Section title="All checks">
      <Table
        caption="All checks of the files of this format"
        columns={COLUMNS}
        rows={checks}
        rowKey={(check) => check.id}
        onOpen={(check) => onShow(check.id)}
        rowTone={(check) => (check.id === shownId ? 'chosen' : check.inForce ? undefined : 'quiet')}
      />
    </Section>
  );
}
