import { useAsOf } from '../location.ts';
import { SHAPES, Shape } from '../ui/standing-shapes.tsx';
import { useAuditCounts } from './use-audit-counts.ts';

/** How many findings are open, beside the name of the Audit screen; what must be fixed shows as a full triangle. */
export function FindingCount() {
  const { asOf } = useAsOf();
  const { counts } = useAuditCounts(asOf);
  if (!counts) return null;
  const open = counts['must fix'] + counts['should fix'] + counts.note;
  if (open === 0) return null;
  const worst = counts['must fix'] > 0 ? 'must fix' : counts['should fix'] > 0 ? 'should fix' : 'note';
  return (
    <span className={`contents-count contents-count-${worst.replace(' ', '-')}`}>
      <Shape>{SHAPES.severity[worst]}</Shape>
      <span aria-hidden="true">{open.toLocaleString()}</span>
      <span className="visually-hidden">
        {open.toLocaleString()} open: {counts['must fix']} must fix, {counts['should fix']} should fix,{' '}
        {counts.note} to note
      </span>
    </span>
  );
}
