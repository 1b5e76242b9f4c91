import { type ReactNode, useState } from 'react';
import { Select, TextInput } from '../../../ui/index.ts';

/** An entry of a code list with its plain name. */
interface Coded {
  code: string;
  name: string;
}

export interface CodeInputProps {
  label: string;
  labelHidden?: boolean | undefined;
  value: string;
  onChange: (code: string) => void;
  choices: readonly Coded[];
  /** Words of the entry that lets any other code be typed. */
  other: string;
  /** Words of an entry for none; left out where a code is needed. */
  none?: string | undefined;
  placeholder?: string | undefined;
  upperCase?: boolean | undefined;
  help?: ReactNode;
  error?: string | undefined;
  required?: boolean | undefined;
  name?: string | undefined;
}

const OTHER = 'other';
const NONE = 'none';

/** One of a short list of codes, or any other code of the standard's full list, typed. */
export function CodeInput(props: CodeInputProps) {
  const { label, value, onChange, choices } = props;
  const known = choices.some((choice) => choice.code === value);
  const [typing, setTyping] = useState(value !== '' && !known);
  const other = typing || (value !== '' && !known);
  const chosen = other ? OTHER : value === '' && props.none !== undefined ? NONE : value;
  const choose = (next: string) => {
    setTyping(next === OTHER);
    onChange(next === OTHER || next === NONE ? '' : next);
  };
  const select = (
    <Select
      label={label}
      labelHidden={props.labelHidden}
      value={chosen}
      onChange={choose}
      placeholder={props.none === undefined ? (props.placeholder ?? 'Choose') : undefined}
      choices={[
        ...(props.none === undefined ? [] : [{ value: NONE, label: props.none }]),
        ...choices.map((choice) => ({ value: choice.code, label: choice.name })),
        { value: OTHER, label: props.other },
      ]}
      help={props.help}
      error={other ? undefined : props.error}
      required={props.required}
      name={props.name}
    />
  );
  if (!other) return select;
  return (
    <div className="code-input">
      {select}
      <TextInput
        label={`Code: ${label}`}
        labelHidden
        placeholder="Code"
        mono
        width="short"
        value={value}
        onChange={(text) => onChange(props.upperCase ? text.trim().toUpperCase() : text.trim().toLowerCase())}
        error={props.error}
        required={props.required}
      />
    </div>
  );
}
