import { Link, useLocation } from 'wouter';
import { FindingCount } from './finding-count.tsx';
import { Mark } from './mark.tsx';
import { isAt, routeOf, SCREENS } from './screens.ts';

/** The screens, set like a page of contents: the letter is pressed after `g`. */
export function Contents({ id, onMove }: { id: string; onMove: () => void }) {
  const [path] = useLocation();
  return (
    <div className="contents" id={id}>
      <ul>
        {SCREENS.map((entry) => (
          <li key={entry.path}>
            <Link
              href={routeOf(entry)}
              className="contents-entry"
              aria-current={isAt(entry, path) ? 'page' : undefined}
              aria-keyshortcuts={`g ${entry.key}`}
              onClick={onMove}
            >
              <span className="contents-name">{entry.name}</span>
              {entry.path === '/audit' ? <FindingCount /> : null}
              <span className="contents-leader" aria-hidden="true" />
              <span className="contents-key" aria-hidden="true">
                {entry.key}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Mark and name of the product. */
export function Brand() {
  return (
    <p className="brand">
      <Mark />
      <span>Edition Ledger</span>
    </p>
  );
}
