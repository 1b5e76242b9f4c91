import type { Contributor } from '../../../../src/contract/editions.ts';
import { Button, TextInput } from '../../../ui/index.ts';
import { fieldHelp } from '../parts/field-help.tsx';
import { OrderedRows } from '../parts/ordered-rows.tsx';
import type { ErrorOf } from '../parts/refusals.ts';
import { RoleInput } from '../parts/role-input.tsx';
import { UnderstoodNames } from './understood-names.tsx';
import { usePastedNames } from './use-pasted-names.ts';

export interface ContributorsInputProps {
  value: readonly Contributor[];
  onChange: (value: Contributor[]) => void;
  errorOf: ErrorOf;
}

/** The rows that name somebody; a row without a name was never filled in. */
export function namedContributors(rows: readonly Contributor[]): Contributor[] {
  return rows.filter(({ name }) => name.trim() !== '');
}

/** People in the order of the title page, each with a role of ONIX List 17; a pasted list fills a row for each. */
export function ContributorsInput({ value, onChange, errorOf }: ContributorsInputProps) {
  const { pasted, paste, take, leave, forget } = usePastedNames(value, onChange);
  const add = () => onChange([...value, { role: value.length === 0 ? 'A01' : '', name: '' }]);
  return (
    <OrderedRows
      label="Contributors"
      one="Contributor"
      help={fieldHelp(
        'contributors',
        'A row without a name is left out; a pasted list of names fills a row for each.',
      )}
      rows={value}
      onChange={(rows) => {
        forget();
        onChange(rows);
      }}
      nameOf={(row) => row.name}
      empty="Nobody is named yet."
      error={errorOf('contributors')}
      add={<Button onClick={add}>Add a contributor</Button>}
    >
      {(row, index, change) => (
        <>
          <div className="row-fields">
            <TextInput
              label={`Name ${index + 1}`}
              value={row.name}
              onChange={(name) => change({ ...row, name })}
              onPaste={(text) => paste(index, text)}
              error={errorOf(`contributors.${index}.name`)}
            />
            <RoleInput
              label={`Role ${index + 1}`}
              value={row.role}
              onChange={(role) => change({ ...row, role })}
              error={errorOf(`contributors.${index}.role`)}
            />
          </div>
          {pasted?.index === index ? (
            <UnderstoodNames
              pasted={pasted}
              onTake={(way) => take(pasted, way)}
              onLeave={() => leave(pasted)}
            />
          ) : null}
        </>
      )}
    </OrderedRows>
  );
}
