import type { SheetField } from '../../../../../src/contract/sheet-fields.ts';
import type { FoundColumn } from '../../../../../src/contract/sheets.ts';
import { currencyCodes } from '../../../../lib/money.ts';
import { Select } from '../../../../ui/index.ts';
import { RoleInput } from '../../../work/parts/role-input.tsx';
import '../../../work/forms.css';
import { LEFT_OUT, READING_CHOICES } from './choices.ts';

interface PartProps {
  columns: readonly FoundColumn[];
  fields: readonly SheetField[];
  channels: readonly string[];
  onChange: (index: number, change: Partial<FoundColumn>) => void;
}

interface OneProps extends Omit<PartProps, 'columns'> {
  column: FoundColumn;
}

const nameOf = ({ header, index }: FoundColumn) => (header === '' ? `column ${index + 1}` : header);

/** Currency, channel or role of a column. */
function Detail({ column, field, channels, onChange }: OneProps & { field: SheetField }) {
  const name = nameOf(column);
  const set = (detail: string) => onChange(column.index, { detail });
  if (field.detail === 'currency')
    return (
      <Select
        label={`Currency of ${name}`}
        value={column.detail}
        onChange={set}
        placeholder="Choose…"
        choices={currencyCodes(['EUR', 'GBP', 'USD']).map((code) => ({ value: code, label: code }))}
      />
    );
  if (field.detail === 'channel')
    return (
      <Select
        label={`Channel of ${name}`}
        value={column.detail}
        onChange={set}
        placeholder="Choose…"
        choices={channels.map((channel) => ({ value: channel, label: channel }))}
      />
    );
  if (field.detail !== 'role') return null;
  return (
    <RoleInput
      label={`Role of ${name}`}
      value={column.detail}
      onChange={set}
      help="Of every name in the column. Author, or nothing, leaves roles that stand in brackets behind names as they are."
    />
  );
}

function OneColumn(props: OneProps) {
  const { column, fields, onChange } = props;
  const field = fields.find(({ key }) => key === column.field);
  const name = nameOf(column);
  const choose = (key: string) => {
    const next = fields.find((entry) => entry.key === key);
    const keeps = next && field && next.detail === field.detail;
    const reads = next && field && next.kind === field.kind;
    onChange(column.index, {
      field: next ? next.key : null,
      detail: keeps ? column.detail : '',
      reading: reads ? column.reading : null,
      from: 'none',
      why: '',
    });
  };
  return (
    <li>
      <div className="column-cells">
        <strong>{name}</strong>
        <p className="soft">{column.samples.length === 0 ? 'no cell filled' : column.samples.join(' · ')}</p>
      </div>
      <div className="column-choice">
        <Select
          label={`What ${name} holds`}
          value={field?.key ?? LEFT_OUT}
          onChange={choose}
          choices={[
            { value: LEFT_OUT, label: '(left out)' },
            ...fields.map(({ key, header }) => ({ value: key as string, label: header })),
          ]}
          help={field?.about || undefined}
        />
        {field ? <Detail {...props} field={field} /> : null}
        {field && field.kind !== 'text' ? (
          <Select
            label={`How ${name} is written`}
            value={column.reading ?? ''}
            placeholder="Choose…"
            onChange={(reading) => onChange(column.index, { reading })}
            choices={READING_CHOICES[field.kind]}
          />
        ) : null}
        {column.why === '' ? null : <p className="column-why">{column.why}</p>}
      </div>
    </li>
  );
}

/** Each column of a file with what it is taken to hold, to be changed where it is not so. */
export function ColumnsPart({ columns, ...rest }: PartProps) {
  return (
    <ol className="columns-list">
      {columns.map((column) => (
        <OneColumn key={column.index} column={column} {...rest} />
      ))}
    </ol>
  );
}
