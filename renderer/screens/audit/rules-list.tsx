import { type Column, Standing, Table } from '../../ui/index.ts';
import type { Rule } from './words.ts';

const COLUMNS: Column<Rule>[] = [
  { key: 'sentence', header: 'Rule', cell: (rule) => rule.sentence, sortBy: (rule) => rule.sentence },
  {
    key: 'severity',
    header: 'Gravity',
    cell: (rule) => <Standing of="severity" value={rule.severity} />,
    sortBy: (rule) => rule.severity,
  },
  { key: 'mend', header: 'How to mend', cell: (rule) => rule.mend },
  { key: 'source', header: 'Source', cell: (rule) => rule.source, sortBy: (rule) => rule.source },
];

/** Every rule the audit applies, folded away until it is asked for. */
export function RulesList({ rules }: { rules: readonly Rule[] }) {
  return (
    <details className="audit-rules">
      <summary>Show the {rules.length.toLocaleString()} rules</summary>
      <Table caption="Rules of the audit" columns={COLUMNS} rows={rules} rowKey={(rule) => rule.id} />
    </details>
  );
}
