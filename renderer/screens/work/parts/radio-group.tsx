import { type ReactNode, useId } from 'react';
import { Field } from '../../../ui/index.ts';

interface RadioChoice<Value extends string> {
  value: Value;
  label: string;
  help?: ReactNode;
}

export interface RadioGroupProps<Value extends string> {
  label: string;
  value: Value;
  onChange: (value: Value) => void;
  choices: readonly RadioChoice<Value>[];
}

/** One of a few ways, all of them seen. */
export function RadioGroup<Value extends string>({
  label,
  value,
  onChange,
  choices,
}: RadioGroupProps<Value>) {
  const id = useId();
  return (
    <Field label={label} as="group">
      {() => (
        <div className="radios">
          {choices.map((choice) => (
            <div className="check" key={choice.value}>
              <input
                id={`${id}-${choice.value}`}
                type="radio"
                name={id}
                checked={choice.value === value}
                aria-describedby={choice.help ? `${id}-${choice.value}-help` : undefined}
                onChange={() => onChange(choice.value)}
              />
              <div>
                <label htmlFor={`${id}-${choice.value}`}>{choice.label}</label>
                {choice.help ? (
                  <p className="field-help" id={`${id}-${choice.value}-help`}>
                    {choice.help}
                  </p>
                ) : null}
              </div>
            </div>
          ))}
        </div>
      )}
    </Field>
  );
}
