/** What the guard looks at: the request as it came, before any URL is normalised. */
export interface Asked {
  method: string;
  path: string;
  header(name: string): string | undefined;
}

/** Why a request is turned away. */
export interface TurnedAway {
  status: 401 | 403 | 405;
  sentence: string;
}

/** Where the start key is exchanged; the one address that needs no window key. */
const EXCHANGE = /^\/start\/[^/]+$/;

/**
 * Decides whether a request comes from a window of this launch. `origin` is `http://127.0.0.1:PORT`.
 * Host must be exact (a foreign name pointing here is a rebinding attack), Origin must be exact where the browser
 * sends one and always on a POST, and everything but the exchange of the start key needs the window's key.
 */
export function turnAway(asked: Asked, origin: string, hasKey: boolean): TurnedAway | undefined {
  const host = new URL(origin).host;
  if (asked.header('host') !== host) {
    return { status: 403, sentence: `This address is not known here; open ${origin}/ instead.` };
  }
  const from = asked.header('origin');
  const sent = asked.method === 'POST';
  if (from === undefined ? sent : from !== origin) {
    return { status: 403, sentence: 'Only Edition Ledger’s own pages may ask this.' };
  }
  if (asked.method !== 'GET' && !sent) {
    return { status: 405, sentence: 'Only GET and POST are answered here.' };
  }
  if (isForeignFetch(asked)) {
    return { status: 403, sentence: 'Only Edition Ledger’s own pages may ask this.' };
  }
  if (!hasKey && !(asked.method === 'GET' && EXCHANGE.test(asked.path))) {
    return {
      status: 401,
      sentence:
        'This window’s key is missing or no longer valid; open the start address that Edition Ledger printed, or start it again.',
    };
  }
  return undefined;
}

/** A page elsewhere may link here (a navigation), but not fetch, embed or post. Fetch Metadata, W3C. */
function isForeignFetch(asked: Asked): boolean {
  const site = asked.header('sec-fetch-site');
  if (site === undefined || site === 'same-origin' || site === 'none') return false;
  return asked.method === 'POST' || asked.header('sec-fetch-dest') !== 'document';
}
