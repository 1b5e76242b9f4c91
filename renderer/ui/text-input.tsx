import type { HTMLInputAutoCompleteAttribute } from 'react';
import { CharacterCount } from './character-count.tsx';
import { classNames } from './class-names.ts';
import { isWhole } from './draft.ts';
import { Field, type FieldCommon } from './field.tsx';

export interface TextInputProps extends FieldCommon {
  value: string;
  onChange: (value: string) => void;
  type?: 'text' | 'search' | 'url' | 'email' | undefined;
  placeholder?: string | undefined;
  /** Shows a count against a length, and who sets it; typing beyond it is never cut off. */
  counted?: { limit: number; setBy: string } | undefined;
  /** Fixed-width figures, for numbers and codes. */
  mono?: boolean | undefined;
  /** Known values offered while typing. */
  suggestions?: readonly string[] | undefined;
  /** `short` for codes and numbers, `full` for the width of the form. */
  width?: 'short' | 'medium' | 'full' | undefined;
  language?: string | undefined;
  autoComplete?: HTMLInputAutoCompleteAttribute | undefined;
  onBlur?: (() => void) | undefined;
  /** Sees what is pasted over the whole text first; answers whether it took it, so that it does not go in. */
  onPaste?: ((text: string) => boolean) | undefined;
}

/** One line of text. */
export function TextInput(props: TextInputProps) {
  const { value, onChange, type = 'text', mono, suggestions, width = 'full' } = props;
  const aside = props.counted ? <CharacterCount text={value} {...props.counted} /> : null;
  return (
    <Field {...props} aside={aside}>
      {(ids) => (
        <>
          <input
            {...ids}
            className={classNames('input', `input-${width}`, mono && 'mono')}
            type={type}
            name={props.name}
            value={value}
            disabled={props.disabled}
            placeholder={props.placeholder}
            lang={props.language}
            autoComplete={props.autoComplete ?? 'off'}
            spellCheck={mono ? false : undefined}
            list={suggestions ? `${ids.id}-known` : undefined}
            onChange={(event) => onChange(event.target.value)}
            onBlur={props.onBlur}
            onPaste={(event) => {
              if (isWhole(event.currentTarget) && props.onPaste?.(event.clipboardData.getData('text/plain')))
                event.preventDefault();
            }}
          />
          {suggestions ? (
            <datalist id={`${ids.id}-known`}>
              {suggestions.map((known) => (
                <option key={known} value={known} />
              ))}
            </datalist>
          ) : null}
        </>
      )}
    </Field>
  );
}

/** A screen's search; `/` moves the focus here. */
export function SearchInput(props: Omit<TextInputProps, 'type'>) {
  return (
    <div className="search" data-screen-search="">
      <TextInput {...props} type="search" />
    </div>
  );
}
