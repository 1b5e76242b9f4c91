import { Button } from '../../../ui/index.ts';
import type { PastedRows } from './paste-names.ts';

export interface UnderstoodNamesProps {
  pasted: PastedRows;
  onTake: (way: number) => void;
  /** Puts the text in as it was pasted. */
  onLeave: () => void;
}

/** How a pasted list of names was read, or the ways it can be read, with the text itself as a way out. */
export function UnderstoodNames({ pasted, onTake, onLeave }: UnderstoodNamesProps) {
  const { ways, taken, text } = pasted;
  const namesOf = (way: number) => ways[way]?.map(({ name }) => name).join('; ') ?? '';
  const one = (way: number) => `${ways[way]?.length === 1 ? 'One person' : `${ways[way]?.length} people`}`;
  return (
    <div className="understood">
      {taken === undefined ? (
        <>
          <span>“{text}” can be read in two ways:</span>
          {ways.map((_rows, way) => (
            <Button key={namesOf(way)} onClick={() => onTake(way)}>
              {one(way)}: {namesOf(way)}
            </Button>
          ))}
        </>
      ) : (
        <span>
          “{text}” is read as {one(taken).toLowerCase()}: {namesOf(taken)}. Look at the roles.
        </span>
      )}
      <Button kind="quiet" onClick={onLeave}>
        Leave it as pasted
      </Button>
    </div>
  );
}
