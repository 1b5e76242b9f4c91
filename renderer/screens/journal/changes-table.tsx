import { TableFrame } from '../../ui/table-frame.tsx';
import type { Change, Entry } from './changes.ts';

const NOTHING = <span className="soft">—</span>;

interface ChangesTableProps {
  action: Entry['action'];
  /** Names the table for those who cannot see what stands above it. */
  label: string;
  changes: readonly Change[];
}

/** Field by field what stood before and after; an added record has no before, a removed one no after. */
export function ChangesTable({ action, label, changes }: ChangesTableProps) {
  return (
    <TableFrame label={label}>
      <table className="changes">
        <caption className="visually-hidden">{label}</caption>
        <thead>
          <tr>
            <th scope="col">Field</th>
            {action === 'added' ? null : <th scope="col">Before</th>}
            {action === 'removed' ? null : (
              <th scope="col">{action === 'added' ? 'Recorded as' : 'After'}</th>
            )}
          </tr>
        </thead>
        <tbody>
          {changes.map((change) => (
            <tr key={change.field}>
              <th scope="row">{change.field}</th>
              {action === 'added' ? null : <td>{change.before || NOTHING}</td>}
              {action === 'removed' ? null : <td>{change.after || NOTHING}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
}
