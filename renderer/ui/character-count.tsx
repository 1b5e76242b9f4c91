import { classNames } from './class-names.ts';

export interface CharacterCountProps {
  text: string;
  /** Characters that are advised or taken at most. */
  limit: number;
  /** Who takes no more, such as the name of a channel. */
  setBy?: string | undefined;
}

/** How long a text is against a limit, as it is typed; typing beyond it is never cut off. */
export function CharacterCount({ text, limit, setBy }: CharacterCountProps) {
  const count = [...text].length;
  const over = count - limit;
  return (
    <p className={classNames('field-count', over > 0 && 'field-count-over')}>
      {count.toLocaleString()} of {limit.toLocaleString()} characters
      {setBy === undefined ? '' : ` (${setBy})`}
      {over > 0 ? `, ${over.toLocaleString()} too many` : ''}
    </p>
  );
}
