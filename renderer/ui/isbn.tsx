import { CopyButton } from './copy-button.tsx';

export interface IsbnProps {
  /** The number as it is to be read, hyphenated as the host gives it. */
  value: string;
  copy?: boolean | undefined;
}

/** An ISBN in fixed-width figures that never breaks over a line, with a copy button on request. */
export function Isbn({ value, copy }: IsbnProps) {
  return (
    <span className="isbn">
      <span className="mono">{value}</span>
      {copy ? <CopyButton small text={value} what={value} /> : null}
    </span>
  );
}
