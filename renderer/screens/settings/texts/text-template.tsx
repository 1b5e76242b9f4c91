import { type ReactNode, useRef } from 'react';
import { TEXTS, type TextKind } from '../../../../src/contract/text-kinds.ts';
import { Button, TextArea } from '../../../ui/index.ts';
import './texts.css';

const PLACEHOLDER = /\{([^{}\n]*)\}/g;

/** The text as its reader would see it, filled with the demo press's facts. */
function filledExample(kind: TextKind, template: string): string {
  const examples = new Map<string, string>(
    TEXTS[kind].placeholders.map(({ name, example }) => [name, example]),
  );
  return template.replace(PLACEHOLDER, (typed: string, name: string) => examples.get(name) ?? typed);
}

interface PlaceholdersProps {
  kind: TextKind;
  onInsert: (text: string) => void;
  disabled: boolean;
}

/** The placeholders, each a button that puts it where the writing stands, with what it becomes. */
function Placeholders({ kind, onInsert, disabled }: PlaceholdersProps) {
  return (
    <div>
      <p className="field-help">Words in braces are filled in. Press one to put it where you are writing.</p>
      <ul className="placeholders">
        {TEXTS[kind].placeholders.map(({ name, means }) => (
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

export interface TextTemplateProps {
  kind: TextKind;
  label: string;
  name: string;
  help?: ReactNode;
  value: string;
  onChange: (value: string) => void;
  error?: string | undefined;
  disabled?: boolean | undefined;
  required?: boolean | undefined;
}

/** A text that is filled in, with its placeholders explained and an example of the result. */
export function TextTemplate({ kind, ...props }: TextTemplateProps) {
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
    <div className="text-template" ref={box}>
      <TextArea {...props} rows={11} />
      <Placeholders kind={kind} onInsert={insert} disabled={disabled} />
      {value.trim() === '' ? null : (
        <details>
          <summary>Read an example</summary>
          <pre className="text-example">{filledExample(kind, value)}</pre>
        </details>
      )}
    </div>
  );
}
