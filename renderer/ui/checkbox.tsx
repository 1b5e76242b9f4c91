import { type ReactNode, useId } from 'react';

export interface CheckboxProps {
  label: ReactNode;
  checked: boolean;
  onChange: (checked: boolean) => void;
  help?: ReactNode;
  error?: string | undefined;
  disabled?: boolean | undefined;
  name?: string | undefined;
}

/** A yes or no with its label behind it. */
export function Checkbox({ label, checked, onChange, help, error, disabled, name }: CheckboxProps) {
  const id = useId();
  const described = [error ? `${id}-error` : '', help ? `${id}-help` : ''].filter(Boolean).join(' ');
  return (
    <div className="check">
      <input
        id={id}
        type="checkbox"
        name={name}
        checked={checked}
        disabled={disabled}
        aria-describedby={described || undefined}
        aria-invalid={error ? true : undefined}
        onChange={(event) => onChange(event.target.checked)}
      />
      <div>
        <label htmlFor={id}>{label}</label>
        {error ? (
          <p className="field-error" id={`${id}-error`}>
            {error}
          </p>
        ) : null}
        {help ? (
          <p className="field-help" id={`${id}-help`}>
            {help}
          </p>
        ) : null}
      </div>
    </div>
  );
}
