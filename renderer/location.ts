import { type NavigateOptions, useLocation, useSearch } from 'wouter';
import { navigate as toHash, useHashLocation } from 'wouter/use-hash-location';
import { isDay } from './lib/dates.ts';

const AS_OF = 'asOf';

function currentAsOf(search: string): string | undefined {
  const day = new URLSearchParams(search).get(AS_OF);
  return day !== null && isDay(day) ? day : undefined;
}

/** A route's path and query, with the past day that is being looked at carried along. */
function withAsOf(to: string): { path: string; query: string } {
  const [path = '/', query = ''] = to.split('?');
  const params = new URLSearchParams(query);
  const day = currentAsOf(window.location.search);
  if (day !== undefined && !params.has(AS_OF)) params.set(AS_OF, day);
  return { path, query: params.toString() };
}

function navigate(to: string, options?: NavigateOptions): void {
  const { path, query } = withAsOf(to);
  toHash(`${path}?${query}`, options);
}

// Going back to an address whose query differs too sends no `hashchange`, which is all the router listens to.
window.addEventListener('popstate', () => window.dispatchEvent(new HashChangeEvent('hashchange')));

/** Routes live in the hash and queries before it: `?asOf=2024-05-01#/catalogue`. A move drops every query but `asOf`. */
export function useLedgerLocation(): [string, typeof navigate] {
  const [path] = useHashLocation();
  return [path, navigate];
}

useLedgerLocation.hrefs = (to: string): string => {
  const { path, query } = withAsOf(to);
  return `${query === '' ? window.location.pathname : `?${query}`}#${path}`;
};

/** A filter or page of the current view, kept in the address so that going back restores it. */
export function useQueryParam(name: string, fallback = ''): [string, (value: string) => void] {
  const value = new URLSearchParams(useSearch()).get(name) ?? fallback;
  const [path] = useLocation();
  const set = (next: string) => {
    const params = new URLSearchParams(window.location.search);
    if (next === fallback) params.delete(name);
    else params.set(name, next);
    toHash(`${path}?${params}`, { replace: true });
  };
  return [value, set];
}

/** The past day that every screen shows, if one is set; screens are then for reading only. */
export interface AsOf {
  /** `YYYY-MM-DD`; undefined means today. Pass it on as the `asOf` input of queries. */
  asOf: string | undefined;
  setAsOf: (day: string | undefined) => void;
}

/** Reads and sets the day in the address, where it stays across moves between screens. */
export function useAsOf(): AsOf {
  const asOf = currentAsOf(useSearch());
  const [path] = useLocation();
  const setAsOf = (day: string | undefined) => {
    const params = new URLSearchParams(window.location.search);
    if (day === undefined) params.delete(AS_OF);
    else params.set(AS_OF, day);
    toHash(`${path}?${params}`);
  };
  return { asOf, setAsOf };
}
