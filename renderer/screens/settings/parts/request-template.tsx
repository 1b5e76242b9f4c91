import { type ReactNode, useRef } from 'react';
import { Button, TextArea } from '../../../ui/index.ts';
import './request-template.css';

/** What a request text can name: with what each stands for, and the demo's words for the example. */
const PLACEHOLDERS = [
  { name: 'title', means: 'title of the edition', example: 'The Salt Almanac' },
  { name: 'edition', means: 'its edition statement', example: '1st edition' },
  { name: 'form', means: 'what it is: paperback, e-book…', example: 'Paperback' },
  { name: 'isbn', means: 'its ISBN, hyphenated', example: '979-8-969999-00-8' },
  { name: 'replacement', means: 'ISBN of the format that takes its place', example: '979-8-969999-05-3' },
  { name: 'channel', means: 'name of the channel', example: 'Broadside Wholesale' },
  { name: 'publisher', means: 'your press', example: 'Halyard & Fen' },
  { name: 'date', means: 'the day the text is made', example: '2026-03-02' },
] as const;

const PLACEHOLDER = /\{([^{}\n]*)\}/g;

/** The template as a channel would read it, filled with invented facts. */
function filledExample(template: string): string {
  return template.replace(
    PLACEHOLDER,
    (typed: string, name: string) => PLACEHOLDERS.find((known) => known.name === name)?.example ?? typed,
  );
}

/** The placeholders, each a button that puts it where the writing stands, with what it becomes. */
function Placeholders({ onInsert, disabled }: { onInsert: (text: string) => void; disabled: boolean }) {
  return (
    <div>
      <p className="field-help">
        Words in braces are filled in for each format. Press one to put it where you are writing.
      </p>
      <ul className="placeholders">
        {PLACEHOLDERS.map(({ name, means }) => (
          <li key={name}>
            <Button
              kind="quiet"
              disabled={disabled}
              label={`Insert {${name}}, ${means}`}
              onClick={() => onInsert(`{${name}}`)}
            >
              <code>{`{${name}}`}</code>
            </Button>
            <span className="soft">{means}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

export interface RequestTemplateProps {
  label: string;
  help?: ReactNode;
  value: string;
  onChange: (value: string) => void;
  error?: string | undefined;
  disabled?: boolean | undefined;
  required?: boolean | undefined;
}

/** The text that asks a channel to stop selling, with its placeholders explained and an example of the result. */
export function RequestTemplate(props: RequestTemplateProps) {
  const { value, onChange, disabled = false } = props;
  const box = useRef<HTMLDivElement>(null);
  const insert = (text: string) => {
    const area = box.current?.querySelector('textarea');
    const from = area?.selectionStart ?? value.length;
    onChange(value.slice(0, from) + text + value.slice(area?.selectionEnd ?? from));
    requestAnimationFrame(() => {
      area?.focus();
      area?.setSelectionRange(from + text.length, from + text.length);
    });
  };
  return (
    <div className="request-template" ref={box}>
      <TextArea {...props} name="requestTemplate" rows={11} />
      <Placeholders onInsert={insert} disabled={disabled} />
      {value.trim() === '' ? null : (
        <details>
          <summary>Read an example</summary>
          <pre className="request-example">{filledExample(value)}</pre>
        </details>
      )}
    </div>
  );
}
