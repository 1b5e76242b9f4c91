import type { OnixRow } from '../../../../src/contract/onix.ts';
import { Checkbox, Isbn, Select } from '../../../ui/index.ts';
import { type PlannedWork, placesFor, STATES } from './words.ts';

/** What would change, field by field. */
function Changes({ row }: { row: OnixRow }) {
  if (row.changes.length === 0) return null;
  return (
    <ul className="onix-changes">
      {row.changes.map((change) => (
        <li key={change.field}>
          <b>{change.field}</b>
          {change.locked ? ' (locked, stays as it is)' : ''}: <del>{change.from || 'empty'}</del> →{' '}
          <ins>{change.to || 'empty'}</ins>
        </li>
      ))}
    </ul>
  );
}

export interface ProductRowProps {
  row: OnixRow;
  works: readonly PlannedWork[];
  taken: boolean;
  disabled: boolean;
  onTake: (taken: boolean) => void;
  onPlace: (place: { work: string; edition: string }) => void;
}

/** One product of the message: what it is, how it stands to the catalogue, and where it goes. */
export function ProductRow({ row, works, taken, disabled, onTake, onPlace }: ProductRowProps) {
  const { word, shape } = STATES[row.state];
  const name = `Row ${row.row}, ${row.title || 'no title'}${row.form ? `, ${row.form}` : ''}`;
  return (
    <li className="onix-product">
      <div className="onix-product-head">
        <Checkbox
          label={name}
          checked={taken}
          disabled={disabled || row.state === 'refused'}
          onChange={onTake}
        />
        <span className="onix-state">
          <span aria-hidden="true">{shape}</span> {word}
        </span>
        {row.isbn ? <Isbn value={row.isbn} /> : <span>no number</span>}
      </div>
      <Changes row={row} />
      {row.notes.map((note) => (
        <p className="onix-note" key={note}>
          {note}
        </p>
      ))}
      {row.state === 'refused' ? (
        <p className="field-help">Line {row.line} of the file.</p>
      ) : (
        <p className="field-help">
          {row.why}
          {row.kept > 0 ? ` ${row.kept} parts of its record have no field here and are kept.` : ''}
        </p>
      )}
      {row.state === 'new' || (row.state === 'conflicting' && row.changes.length === 0) ? (
        <Select
          label={`Where row ${row.row} goes`}
          width="full"
          value={`${row.work}/${row.edition}`}
          disabled={disabled}
          choices={placesFor(row, works)}
          onChange={(value) => {
            const [work = '', edition = ''] = value.split('/');
            onPlace({ work, edition });
          }}
        />
      ) : null}
    </li>
  );
}
