import { Link } from 'wouter';

export interface Crumb {
  label: string;
  /** A route such as `/catalogue`; left out for the place one is at. */
  to?: string | undefined;
}

/** The way up from here; the last entry is where one is. */
export function Breadcrumb({ crumbs }: { crumbs: readonly Crumb[] }) {
  return (
    <nav aria-label="Way up" className="crumbs">
      <ol>
        {crumbs.map((crumb, index) => (
          <li key={`${crumb.to}${crumb.label}`}>
            {crumb.to === undefined ? (
              <span aria-current={index === crumbs.length - 1 ? 'page' : undefined}>{crumb.label}</span>
            ) : (
              <Link href={crumb.to}>{crumb.label}</Link>
            )}
          </li>
        ))}
      </ol>
    </nav>
  );
}
