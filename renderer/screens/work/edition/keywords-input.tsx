import { type KeyboardEvent, useState } from 'react';
import { announce } from '../../../status.ts';
import { Button, TextArea } from '../../../ui/index.ts';
import { counted } from '../parts/names.ts';
import { OrderedRows } from '../parts/ordered-rows.tsx';
import { splitKeywords } from './split-keywords.ts';

export interface KeywordsInputProps {
  value: readonly string[];
  onChange: (value: string[]) => void;
  help?: string | undefined;
  error?: string | undefined;
}

/** Keywords in order, the strongest first. What is typed is added by Enter, by the button, and on leaving. */
export function KeywordsInput({ value, onChange, help, error }: KeywordsInputProps) {
  const [text, setText] = useState('');
  const add = () => {
    const known = new Set(value.map((keyword) => keyword.toLowerCase()));
    const added = splitKeywords(text).filter((keyword) => !known.has(keyword.toLowerCase()));
    if (text.trim() === '') return;
    setText('');
    onChange([...value, ...added]);
    announce(added.length === 0 ? 'These are listed already.' : `${counted(added.length, 'keyword')} added.`);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || event.shiftKey || event.nativeEvent.isComposing) return;
    if (!(event.target instanceof HTMLTextAreaElement)) return;
    event.preventDefault();
    add();
  };
  return (
    <OrderedRows
      label="Keywords"
      one="Keyword"
      help={help}
      rows={value}
      onChange={onChange}
      nameOf={(keyword) => keyword}
      empty="No keyword yet."
      error={error}
      add={
        // biome-ignore lint/a11y/noStaticElementInteractions: Enter inside the text area adds, and nothing else is pressed here
        <div className="keyword-add" onKeyDown={onKeyDown} onBlur={add}>
          <TextArea
            label="Add keywords"
            rows={2}
            value={text}
            onChange={setText}
            help="Part several with ; or , or a new line. A pasted list is taken apart."
          />
          <Button onClick={add}>Add to the list</Button>
        </div>
      }
    >
      {(keyword) => <span>{keyword}</span>}
    </OrderedRows>
  );
}
