import { Button } from '../../ui/index.ts';

interface PagerProps {
  from: number;
  count: number;
  total: number;
  onMove: (from: number) => void;
}

/** Which works of all are shown, and the way to the others. */
export function Pager({ from, count, total, onMove }: PagerProps) {
  const last = Math.min(from + count, total);
  const range = total === 0 ? 'No work' : `Works ${(from + 1).toLocaleString()} to ${last.toLocaleString()}`;
  return (
    <div className="pager">
      <p role="status">
        {range} of {total.toLocaleString()}
      </p>
      {total > count ? (
        <nav className="row" aria-label="Pages of works">
          <Button
            disabled={from === 0}
            reason="These are the first works."
            onClick={() => onMove(Math.max(0, from - count))}
          >
            Previous works
          </Button>
          <Button
            disabled={last >= total}
            reason="These are the last works."
            onClick={() => onMove(from + count)}
          >
            Next works
          </Button>
        </nav>
      ) : null}
    </div>
  );
}
