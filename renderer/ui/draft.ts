import { useState } from 'react';

/** A typed text and the value it stands for. */
export interface Draft {
  text: string;
  type: (text: string) => void;
  /** Rewrites a readable text in its regular form, when the input is left. */
  settle: () => void;
  /** Puts a text in for the value as it is. */
  write: (text: string) => void;
  /** The text is filled but cannot be read. */
  wrong: boolean;
}

/**
 * Keeps what is being typed beside the value it stands for, so that half-typed numbers survive.
 * `write` and `read` turn the value into text and back; `read` answers undefined for no value.
 */
export function useDraft<Value extends string | number>(
  value: Value | undefined,
  onChange: (value: Value | undefined) => void,
  write: (value: Value) => string,
  read: (text: string) => Value | undefined,
): Draft {
  const asText = (given: Value | undefined) => (given === undefined ? '' : write(given));
  const [text, setText] = useState(() => asText(value));
  const [seen, setSeen] = useState(value);
  if (!Object.is(seen, value)) {
    setSeen(value);
    setText(asText(value));
  }
  return {
    text,
    type: (next) => {
      const nextValue = read(next);
      setText(next);
      setSeen(nextValue);
      onChange(nextValue);
    },
    settle: () => {
      const settled = read(text);
      if (settled !== undefined) setText(write(settled));
    },
    write: setText,
    wrong: text.trim() !== '' && read(text) === undefined,
  };
}

/** A ref that keeps a form from being sent while `problem` is set. */
export function holdBack(problem: string | undefined) {
  return (input: HTMLInputElement | null): void => input?.setCustomValidity(problem ?? '');
}

/** Whether a paste replaces all that an input holds. */
export function isWhole({ selectionStart, selectionEnd, value }: HTMLInputElement): boolean {
  return selectionStart === 0 && selectionEnd === value.length;
}
