import { useId, useRef } from 'react';
import { Sign } from '../../ui/index.ts';
import type { Option } from './options.ts';
import { type Finder as FinderState, useFinder } from './use-finder.ts';
import './finder.css';

function countInWords({ open, settled, text, options }: FinderState): string {
  if (!open || !settled || text.trim() === '') return '';
  if (options.length === 0) return 'Nothing found';
  return options.length === 1 ? 'One found' : `${options.length} found`;
}

function OptionLine({
  option,
  id,
  chosen,
  onChoose,
}: {
  option: Option;
  id: string;
  chosen: boolean;
  onChoose: () => void;
}) {
  return (
    // The keys are handled by the input, which keeps the focus (combobox with a list of options).
    // biome-ignore lint/a11y/useFocusableInteractive: the input points here by aria-activedescendant.
    // biome-ignore lint/a11y/useKeyWithClickEvents: Enter in the input does the same.
    <div
      id={id}
      role="option"
      aria-selected={chosen}
      className="finder-option"
      ref={(element) => {
        if (chosen) element?.scrollIntoView({ block: 'nearest' });
      }}
      onMouseDown={(event) => event.preventDefault()}
      onClick={onChoose}
    >
      <span className={option.italic ? 'italic' : undefined}>{option.label}</span>
      {option.aside === '' ? null : <span className="finder-aside">{option.aside}</span>}
    </div>
  );
}

function Results({ finder, id }: { finder: FinderState; id: string }) {
  const { groups, options, at, settled, text } = finder;
  if (groups.length === 0)
    return (
      <p className="finder-none">
        {text.trim() === ''
          ? 'Type a title, a number or its last four digits, a person, a channel or a task.'
          : settled
            ? 'Nothing found. A number may be written with or without hyphens, or by four digits and more of it.'
            : 'Looking…'}
      </p>
    );
  return (
    <div className="finder-list" id={id} role="listbox" aria-label="Found">
      {groups.map((group) => (
        // biome-ignore lint/a11y/useSemanticElements: a group of options, not of form fields.
        <div key={group.title} role="group" aria-labelledby={`${id}-${group.title}`}>
          <p className="finder-group" id={`${id}-${group.title}`} role="presentation">
            {group.title}
          </p>
          {group.options.map((option) => (
            <OptionLine
              key={option.key}
              option={option}
              id={`${id}-${options.indexOf(option)}`}
              chosen={options.indexOf(option) === at}
              onChoose={() => finder.choose(option)}
            />
          ))}
        </div>
      ))}
    </div>
  );
}

/** The search box of the window: titles, numbers, people, channels, tasks and screens, as they are typed. */
export function Finder() {
  const finder = useFinder();
  const id = useId();
  const box = useRef<HTMLElement>(null);
  const { open, at } = finder;
  const listed = open && finder.options.length > 0;
  return (
    <search
      className="finder"
      ref={box}
      onBlur={(event) => {
        if (!box.current?.contains(event.relatedTarget)) finder.close();
      }}
    >
      <Sign name="search" />
      <input
        // By this the keys of the window find it (shortcuts.ts).
        data-finder=""
        type="text"
        role="combobox"
        className="finder-input"
        aria-label="Find anything in this catalogue"
        aria-expanded={listed}
        aria-controls={listed ? `${id}-list` : undefined}
        aria-autocomplete="list"
        aria-activedescendant={listed && at >= 0 ? `${id}-list-${at}` : undefined}
        aria-keyshortcuts="Control+K Meta+K"
        autoComplete="off"
        spellCheck={false}
        placeholder="Find title, number, person…"
        value={finder.text}
        onChange={(event) => finder.type(event.target.value)}
        onFocus={finder.show}
        onClick={finder.show}
        onKeyDown={finder.onKeyDown}
      />
      <span className="finder-key" aria-hidden="true">
        Ctrl K
      </span>
      {open ? <Results finder={finder} id={`${id}-list`} /> : null}
      <p role="status" className="visually-hidden">
        {countInWords(finder)}
      </p>
    </search>
  );
}
