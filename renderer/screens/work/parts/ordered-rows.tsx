import { type ReactNode, useEffect, useRef } from 'react';
import { announce } from '../../../status.ts';
import { Button } from '../../../ui/index.ts';
import { type Drag, moved, useDrag } from './use-drag.ts';

export interface OrderedRowsProps<T> {
  /** What the list holds; names the group. */
  label: string;
  /** One of them, for announcements and empty rows: `Contributor`. */
  one: string;
  rows: readonly T[];
  onChange: (rows: T[]) => void;
  /** The inputs of a row, or its text. */
  children: (row: T, index: number, change: (row: T) => void) => ReactNode;
  nameOf: (row: T) => string;
  empty: string;
  /** Below the list: the button or input that adds to it. */
  add: ReactNode;
  help?: ReactNode;
  error?: string | undefined;
}

type Doing = { move: -1 | 1; to: number } | { removed: number };

/** Puts the focus on the button that goes on with what was begun, since the rows have changed places. */
function useFocusAfter(rows: number) {
  const list = useRef<HTMLFieldSetElement>(null);
  const doing = useRef<Doing>(undefined);
  useEffect(() => {
    const done = doing.current;
    doing.current = undefined;
    if (!done || !list.current) return;
    const row = 'move' in done ? done.to : Math.min(done.removed, rows - 1);
    const buttons = list.current.querySelectorAll<HTMLElement>(`[data-row="${row}"] .row-order button`);
    const [up, down, remove] = buttons;
    const wanted = 'move' in done ? (done.move < 0 ? up : down) : remove;
    const adding = list.current.querySelector<HTMLElement>('.ordered-add :is(input, button)');
    (wanted ?? adding)?.focus();
  });
  return { list, doing };
}

/** How a row is drawn while one is dragged: lifted, or with a line where the lifted one would go. */
function dragMark(drag: Drag | undefined, index: number): string | undefined {
  if (!drag) return undefined;
  if (index === drag.from) return 'lifted';
  if (index !== drag.to) return undefined;
  return drag.to < drag.from ? 'before' : 'after';
}

/** What the buttons and the handle of a list do to its rows, and say of it. */
function useOrder<T>({ rows, onChange, nameOf, one }: OrderedRowsProps<T>) {
  const { list, doing } = useFocusAfter(rows.length);
  const name = (row: T | undefined, index: number) => (row && nameOf(row)) || `${one} ${index + 1}`;
  const put = (from: number, to: number) => {
    onChange(moved(rows, from, to));
    announce(`${name(rows[from], from)} is now number ${to + 1} of ${rows.length}.`);
  };
  const move = (index: number, by: -1 | 1) => {
    doing.current = { move: by, to: index + by };
    put(index, index + by);
  };
  const remove = (index: number) => {
    doing.current = { removed: index };
    onChange(rows.filter((_row, at) => at !== index));
  };
  return { list, name, put, move, remove };
}

/** A list whose order matters: rows are moved by buttons or dragged by a handle, added and removed. */
export function OrderedRows<T>(props: OrderedRowsProps<T>) {
  const { rows, onChange } = props;
  const { list, name, put, move, remove } = useOrder(props);
  const { drag, handleOf } = useDrag(put);
  const change = (index: number, row: T) => onChange(rows.map((now, at) => (at === index ? row : now)));
  return (
    <fieldset className="field ordered" ref={list}>
      <legend className="field-label">{props.label}</legend>
      {props.help ? <p className="field-help">{props.help}</p> : null}
      {rows.length === 0 ? <p className="soft">{props.empty}</p> : null}
      <ol className="ordered-rows">
        {rows.map((row, index) => (
          // Rows have no identity of their own: what moves is their content, and the focus is moved with it.
          // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
          <li key={index} data-row={index} data-drag={dragMark(drag, index)}>
            {rows.length > 1 ? (
              // The buttons do the same for keys and screen readers.
              <span
                aria-hidden="true"
                className="row-handle"
                title="Drag to another place"
                {...handleOf(index)}
              >
                ⠿
              </span>
            ) : null}
            <div className="row-content">{props.children(row, index, (next) => change(index, next))}</div>
            <RowOrder
              name={name(row, index)}
              first={index === 0}
              last={index === rows.length - 1}
              onMove={(by) => move(index, by)}
              onRemove={() => remove(index)}
            />
          </li>
        ))}
      </ol>
      <div className="ordered-add">{props.add}</div>
      {props.error ? <p className="field-error">{props.error}</p> : null}
    </fieldset>
  );
}

interface RowOrderProps {
  name: string;
  first: boolean;
  last: boolean;
  onMove: (by: -1 | 1) => void;
  onRemove: () => void;
}

function RowOrder({ name, first, last, onMove, onRemove }: RowOrderProps) {
  return (
    <div className="row-order">
      <Button
        kind="quiet"
        label={`Move up: ${name}`}
        disabled={first}
        reason="This one is first."
        onClick={() => onMove(-1)}
      >
        Up
      </Button>
      <Button
        kind="quiet"
        label={`Move down: ${name}`}
        disabled={last}
        reason="This one is last."
        onClick={() => onMove(1)}
      >
        Down
      </Button>
      <Button kind="quiet" label={`Remove: ${name}`} onClick={onRemove}>
        Remove
      </Button>
    </div>
  );
}
