import type { OutputOf } from '../../../src/contract/index.ts';
import { useQueryOf } from '../../api.ts';
import { type Column, Refused, Table } from '../../ui/index.ts';
import { RulesList } from '../audit/rules-list.tsx';
import '../audit/audit.css';
import { Verdict } from '../work/advice/verdict.tsx';
import '../work/advice/advice.css';
import { SOURCES } from './sources.ts';
import type { RuleTable } from './text/types.ts';

type AdviceRule = OutputOf<'editions.adviceRules'>['rules'][number];
type LockPoint = OutputOf<'locks.rules'>['points'][number];

const ADVICE: Column<AdviceRule>[] = [
  { key: 'label', header: 'What changes', cell: (rule) => rule.label, sortBy: (rule) => rule.label },
  {
    key: 'verdict',
    header: 'Number',
    cell: (rule) => <Verdict value={rule.verdict} />,
    sortBy: (rule) => rule.verdict,
  },
  { key: 'rule', header: 'Rule', cell: (rule) => rule.rule },
  { key: 'weigh', header: 'To weigh', cell: (rule) => rule.weigh },
  { key: 'source', header: 'Source', cell: (rule) => rule.source },
];

function AdviceTable() {
  const { data, error } = useQueryOf('editions.adviceRules', {});
  return (
    <>
      <Refused refusal={error} />
      {data ? (
        <details className="audit-rules">
          <summary>Show the {data.rules.length} rules</summary>
          <Table
            caption="Rules on new editions and reprints"
            columns={ADVICE}
            rows={data.rules}
            rowKey={(rule) => rule.change}
          />
        </details>
      ) : null}
    </>
  );
}

const POINTS: Record<LockPoint['at'], string> = {
  submission: 'With the first submission',
  'on sale': 'Once it is on sale',
  end: 'When it has ended',
};

function LockPointView({ point }: { point: LockPoint }) {
  const owners = [
    ['Of the edition', point.edition],
    ['Of the format', point.format],
    ['Of the listing', point.listing],
  ] as const;
  return (
    <div className="help-lock">
      <h3>{POINTS[point.at]}</h3>
      <dl className="help-terms">
        {owners
          .filter(([, fields]) => fields.length > 0)
          .map(([owner, fields]) => (
            <div key={owner}>
              <dt>{owner}</dt>
              <dd>{fields.join(', ')}</dd>
            </div>
          ))}
      </dl>
      <p className="soft">
        {point.reason} {point.source}
      </p>
    </div>
  );
}

function LockTable() {
  const { data, error } = useQueryOf('locks.rules', {});
  return (
    <>
      <Refused refusal={error} />
      {data?.points.map((point) => (
        <LockPointView key={point.at} point={point} />
      ))}
    </>
  );
}

function AuditTable() {
  const { data, error } = useQueryOf('audit.rules', {});
  return (
    <>
      <Refused refusal={error} />
      {data ? <RulesList rules={data.rules} /> : null}
    </>
  );
}

function SourceList() {
  return (
    <ul>
      {Object.entries(SOURCES).map(([id, name]) => (
        <li key={id}>{name}</li>
      ))}
    </ul>
  );
}

/** Rules as the program applies them, asked of it. */
export function RuleTables({ table }: { table: RuleTable }) {
  if (table === 'advice') return <AdviceTable />;
  if (table === 'locks') return <LockTable />;
  return table === 'audit' ? <AuditTable /> : <SourceList />;
}
