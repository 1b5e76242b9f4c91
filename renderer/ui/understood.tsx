import { useState } from 'react';
import { announce } from '../status.ts';
import { Button } from './button.tsx';

/** What a pasted text was taken for: one value, values to choose from, or nothing. */
export interface Understanding<Value> {
  text: string;
  /** None, where it cannot be read; one, which was taken; several, which are asked. */
  values: readonly Value[];
  /** One value that is asked about all the same. */
  ask?: boolean | undefined;
  /** Why it cannot be read. */
  why?: string | undefined;
}

/** Keeps what was understood of the last pasted text; `onTake` gets a value that is sure or was chosen. */
export function useUnderstanding<Value>(write: (value: Value) => string, onTake: (value: Value) => void) {
  const [found, setFound] = useState<Understanding<Value>>();
  const take = (value: Value, text: string) => {
    setFound({ text, values: [value] });
    onTake(value);
    announce(`“${text}” is read as ${write(value)}.`);
  };
  const hear = (next: Understanding<Value>) => {
    const [only, ...more] = next.values;
    if (only !== undefined && more.length === 0 && !next.ask) return take(only, next.text);
    setFound(next);
    announce(
      next.why ?? `“${next.text}” can be read in more than one way. Choose below the input.`,
      next.why === undefined ? 'done' : 'refused',
    );
  };
  const note =
    found === undefined ? null : (
      <Understood found={found} write={write} onTake={(value) => take(value, found.text)} />
    );
  return { hear, note, forget: () => setFound(undefined) };
}

interface UnderstoodProps<Value> {
  found: Understanding<Value>;
  write: (value: Value) => string;
  onTake: (value: Value) => void;
}

function Understood<Value>({ found, write, onTake }: UnderstoodProps<Value>) {
  const { text, values, why, ask } = found;
  const [only] = values;
  if (why !== undefined)
    return (
      <p className="understood">
        “{text}” was not taken. {why}
      </p>
    );
  if (values.length === 1 && only !== undefined && !ask)
    return (
      <p className="understood">
        “{text}” is read as {write(only)}.
      </p>
    );
  return (
    <div className="understood">
      <span>Which is meant by “{text}”?</span>
      {values.map((value) => (
        <Button key={write(value)} onClick={() => onTake(value)}>
          {write(value)}
        </Button>
      ))}
    </div>
  );
}
