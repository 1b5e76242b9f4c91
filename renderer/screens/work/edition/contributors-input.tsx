import type { Contributor } from '../../../../src/contract/editions.ts';
import { CONTRIBUTOR_ROLES } from '../../../../src/contract/terms.ts';
import { Button, TextInput } from '../../../ui/index.ts';
import { CodeInput } from '../parts/code-input.tsx';
import { OrderedRows } from '../parts/ordered-rows.tsx';
import type { ErrorOf } from '../parts/refusals.ts';

export interface ContributorsInputProps {
  value: readonly Contributor[];
  onChange: (value: Contributor[]) => void;
  errorOf: ErrorOf;
}

/** The rows that name somebody; a row without a name was never filled in. */
export function namedContributors(rows: readonly Contributor[]): Contributor[] {
  return rows.filter(({ name }) => name.trim() !== '');
}

/** People in the order of the title page, each with a role of ONIX List 17. */
export function ContributorsInput({ value, onChange, errorOf }: ContributorsInputProps) {
  const add = () => onChange([...value, { role: value.length === 0 ? 'A01' : '', name: '' }]);
  return (
    <OrderedRows
      label="Contributors"
      one="Contributor"
      help="In the order of the title page. A row without a name is left out."
      rows={value}
      onChange={onChange}
      nameOf={(row) => row.name}
      empty="Nobody is named yet."
      error={errorOf('contributors')}
      add={<Button onClick={add}>Add a contributor</Button>}
    >
      {(row, index, change) => (
        <div className="row-fields">
          <TextInput
            label={`Name ${index + 1}`}
            value={row.name}
            onChange={(name) => change({ ...row, name })}
            error={errorOf(`contributors.${index}.name`)}
          />
          <CodeInput
            label={`Role ${index + 1}`}
            value={row.role}
            onChange={(role) => change({ ...row, role })}
            choices={CONTRIBUTOR_ROLES}
            other="Another code (ONIX List 17)"
            placeholder="Choose a role"
            upperCase
            error={errorOf(`contributors.${index}.role`)}
          />
        </div>
      )}
    </OrderedRows>
  );
}
