import { classNames } from './class-names.ts';
import { Field, type FieldCommon } from './field.tsx';

export interface Choice<Value extends string> {
  value: Value;
  label: string;
  disabled?: boolean | undefined;
  /** Choices that share a group are listed under its name. */
  group?: string | undefined;
}

export interface SelectProps<Value extends string> extends FieldCommon {
  value: Value | '';
  /** Called with a choice's value, never with the empty one. */
  onChange: (value: Value) => void;
  choices: readonly Choice<Value>[];
  /** Words of the empty first entry, shown while nothing is chosen. */
  placeholder?: string | undefined;
  width?: 'short' | 'medium' | 'full' | undefined;
}

function options<Value extends string>(choices: readonly Choice<Value>[]) {
  return choices.map((choice) => (
    <option key={choice.value} value={choice.value} disabled={choice.disabled}>
      {choice.label}
    </option>
  ));
}

/** One of a list, in the system's own select. */
export function Select<Value extends string>(props: SelectProps<Value>) {
  const { value, onChange, choices, placeholder, width = 'full' } = props;
  const groups = [...new Set(choices.map((choice) => choice.group))];
  return (
    <Field {...props}>
      {(ids) => (
        <select
          {...ids}
          className={classNames('input', 'select', `input-${width}`)}
          name={props.name}
          value={value}
          disabled={props.disabled}
          onChange={(event) => {
            const chosen = choices.find((choice) => choice.value === event.target.value);
            if (chosen) onChange(chosen.value);
          }}
        >
          {placeholder === undefined ? null : (
            <option value="" disabled>
              {placeholder}
            </option>
          )}
          {groups.map((group) => {
            const members = options(choices.filter((choice) => choice.group === group));
            return group === undefined ? (
              members
            ) : (
              <optgroup key={group} label={group}>
                {members}
              </optgroup>
            );
          })}
        </select>
      )}
    </Field>
  );
}
