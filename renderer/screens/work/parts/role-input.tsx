import { useState } from 'react';
import { holdBack } from '../../../ui/draft.ts';
import { Field } from '../../../ui/index.ts';
import { isRoleCode, type Role, roleProblem, roleText, searchRoles, settledRole } from './role-search.ts';
import { type ListBox, useListBox } from './use-list-box.ts';

export interface RoleInputProps {
  label: string;
  /** A code of ONIX List 17, or what was typed so far. */
  value: string;
  onChange: (role: string) => void;
  error?: string | undefined;
  help?: string;
}

interface RoleListProps {
  id: string;
  roles: readonly Role[];
  list: ListBox;
  onTake: (at: number) => void;
}

function RoleList({ id, roles, list, onTake }: RoleListProps) {
  return (
    <div className="role-list" id={id} role="listbox" aria-label="Roles">
      {roles.map(({ code, name }, index) => (
        // The keys are handled by the input, which keeps the focus (combobox with a list of options).
        // biome-ignore lint/a11y/useFocusableInteractive: the input points here by aria-activedescendant.
        // biome-ignore lint/a11y/useKeyWithClickEvents: Enter in the input does the same.
        <div
          key={code}
          id={`${id}-${index}`}
          role="option"
          aria-selected={index === list.at}
          className="role-option"
          ref={(element) => {
            if (index === list.at) element?.scrollIntoView({ block: 'nearest' });
          }}
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => onTake(index)}
        >
          <span>{name}</span> <span className="mono soft">{code}</span>
        </div>
      ))}
    </div>
  );
}

function countInWords(count: number): string {
  if (count === 0) return 'No role of that name; any code of ONIX List 17 can be written.';
  return count === 1 ? 'One role' : `${count} roles`;
}

/** A role of ONIX List 17, found by typing its label or code; a code without a label here can be written too. */
export function RoleInput({ label, value, onChange, error, help }: RoleInputProps) {
  const [typed, setTyped] = useState<string>();
  // What was typed belongs to the value it gave; a row that was moved brings another.
  const text = typed !== undefined && settledRole(typed) === value ? typed : undefined;
  const roles = searchRoles(text ?? '');
  const take = (at: number) => {
    const role = roles[at];
    if (!role) return;
    onChange(role.code);
    setTyped(undefined);
    list.close();
  };
  const list = useListBox(roles.length, take);
  const problem = roleProblem(value);
  // While the list is open the typing goes on, and half a word is not yet wrong.
  const wrong = list.open ? undefined : (problem ?? error);
  const listed = list.open && roles.length > 0;
  const unknown = isRoleCode(value) && roleText(value) === value;
  return (
    <Field
      label={label}
      error={wrong}
      help={unknown ? 'Not a code we have a label for: look it up in ONIX List 17.' : help}
    >
      {(ids) => (
        <div className="role-input">
          <input
            {...ids}
            ref={holdBack(problem)}
            className="input input-full"
            type="text"
            role="combobox"
            aria-expanded={listed}
            aria-controls={listed ? `${ids.id}-list` : undefined}
            aria-autocomplete="list"
            aria-activedescendant={listed && list.at >= 0 ? `${ids.id}-list-${list.at}` : undefined}
            autoComplete="off"
            spellCheck={false}
            placeholder="Role or code"
            value={text ?? roleText(value)}
            onChange={(event) => {
              setTyped(event.target.value);
              onChange(settledRole(event.target.value));
              list.show(event.target.value.trim() === '' ? -1 : 0);
            }}
            onClick={() => list.show()}
            onKeyDown={list.onKeyDown}
            onBlur={() => {
              setTyped(undefined);
              list.close();
            }}
          />
          {listed ? <RoleList id={`${ids.id}-list`} roles={roles} list={list} onTake={take} /> : null}
          <p role="status" className="visually-hidden">
            {list.open ? countInWords(roles.length) : ''}
          </p>
        </div>
      )}
    </Field>
  );
}
