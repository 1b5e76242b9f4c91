import { type ReactNode, useId } from 'react';
import { classNames } from './class-names.ts';

/** What every labelled input takes. */
export interface FieldCommon {
  label: string;
  /** The label is read out but not seen: for inputs in toolbars and table cells. */
  labelHidden?: boolean | undefined;
  help?: ReactNode;
  /** One sentence: what is wrong and how to mend it. */
  error?: string | undefined;
  required?: boolean | undefined;
  disabled?: boolean | undefined;
  /** The contract's name of the input, for tests and for the browser. */
  name?: string | undefined;
}

/** The attributes that tie an input to its label, help and error. */
export interface FieldIds {
  id: string;
  'aria-describedby': string | undefined;
  'aria-invalid': true | undefined;
  'aria-required': true | undefined;
}

export interface FieldProps extends FieldCommon {
  children: (ids: FieldIds) => ReactNode;
  /** `group` wraps several inputs in a fieldset whose legend is the label. */
  as?: 'single' | 'group' | undefined;
  /** Shown at the end of the help line, such as a character count. */
  aside?: ReactNode;
}

/** Label, help, error and required mark around any control. */
export function Field({
  label,
  labelHidden,
  help,
  error,
  required,
  children,
  as = 'single',
  aside,
}: FieldProps) {
  const id = useId();
  const described = [error ? `${id}-error` : '', help ? `${id}-help` : ''].filter(Boolean).join(' ');
  const ids: FieldIds = {
    id,
    'aria-describedby': described || undefined,
    'aria-invalid': error ? true : undefined,
    'aria-required': required ? true : undefined,
  };
  const title = (
    <>
      {label}
      {required ? <span className="field-required"> (required)</span> : null}
    </>
  );
  const labelClass = classNames('field-label', labelHidden && 'visually-hidden');
  const notes = (
    <>
      {error ? (
        <p className="field-error" id={`${id}-error`}>
          {error}
        </p>
      ) : null}
      {help || aside ? (
        <div className="field-notes">
          {help ? (
            <p className="field-help" id={`${id}-help`}>
              {help}
            </p>
          ) : null}
          {aside}
        </div>
      ) : null}
    </>
  );
  const className = classNames('field', error !== undefined && error !== '' && 'field-wrong');
  if (as === 'group') {
    return (
      <fieldset className={className}>
        <legend className={labelClass}>{title}</legend>
        {children(ids)}
        {notes}
      </fieldset>
    );
  }
  return (
    <div className={className}>
      <label className={labelClass} htmlFor={id}>
        {title}
      </label>
      {children(ids)}
      {notes}
    </div>
  );
}
