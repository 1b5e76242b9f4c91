import { useState } from 'react';
import { Link } from 'wouter';
import type { FormatStanding } from '../../../src/contract/terms.ts';
import { Button, Isbn, Standing } from '../../ui/index.ts';
import { TableFrame } from '../../ui/table-frame.tsx';
import { counted, STANDING_ORDER } from '../catalogue/words.ts';
import type { Audit } from './words.ts';

type Row = Audit['formats'][number];

/** How many formats of a standing are shown before the rest is asked for. */
const SHOWN = 25;

function FormatRow({ row }: { row: Row }) {
  return (
    <tr>
      <th scope="row">
        <Link href={`/work/${row.workId}?format=${row.formatId}`}>
          {row.editionLabel} · {row.name}
        </Link>
      </th>
      <td>
        {row.hyphenated === null ? (
          <span className="soft">no number yet</span>
        ) : (
          <Isbn value={row.hyphenated} />
        )}
      </td>
      <td>
        {row.channels.length === 0 ? <span className="soft">on no channel</span> : null}
        {row.channels.map((line) => (
          <div key={line}>{line}</div>
        ))}
      </td>
    </tr>
  );
}

interface GroupProps {
  standing: FormatStanding;
  rows: readonly Row[];
  whole: boolean;
}

function Group({ standing, rows, whole }: GroupProps) {
  const [all, setAll] = useState(false);
  const shown = all || whole ? rows : rows.slice(0, SHOWN);
  return (
    <tbody>
      <tr className="audit-group">
        <th scope="rowgroup" colSpan={3}>
          <Standing of="format" value={standing} detail={counted(rows.length, 'format')} />
        </th>
      </tr>
      {shown.map((row) => (
        <FormatRow key={row.formatId} row={row} />
      ))}
      {shown.length < rows.length ? (
        <tr>
          <td colSpan={3}>
            <Button kind="quiet" onClick={() => setAll(true)}>
              Show all {counted(rows.length, `${standing} format`)}
            </Button>
          </td>
        </tr>
      ) : null}
    </tbody>
  );
}

/** The formats by standing, each with its number and its channels. `whole` leaves nothing folded away. */
export function FormatGroups({ formats, whole }: { formats: Audit['formats']; whole: boolean }) {
  const groups = Map.groupBy(formats, (row) => row.standing);
  return (
    <TableFrame label="Formats by standing">
      <table className="audit-formats">
        <caption className="visually-hidden">Formats by standing</caption>
        <thead>
          <tr>
            <th scope="col">Format</th>
            <th scope="col">ISBN</th>
            <th scope="col">Channels</th>
          </tr>
        </thead>
        {STANDING_ORDER.map((standing) => {
          const rows = groups.get(standing);
          return rows ? <Group key={standing} standing={standing} rows={rows} whole={whole} /> : null;
        })}
      </table>
    </TableFrame>
  );
}
