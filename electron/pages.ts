import { SECURITY_HEADERS } from '../src/host/pages/headers.ts';
import { readPage } from '../src/host/pages/page-file.ts';
import { isOwnPage } from './policy.ts';

function nothing(status: 404 | 405): Response {
  return new Response(null, { status, headers: SECURITY_HEADERS });
}

/** Answers requests of the program's own scheme with files below `root`, and with nothing else. */
export function pageHandler(root: string): (request: Request) => Promise<Response> {
  return async (request) => {
    if (request.method !== 'GET') return nothing(405);
    if (!isOwnPage(request.url)) return nothing(404);
    const page = await readPage(root, new URL(request.url).pathname);
    if (page === undefined) return nothing(404);
    return new Response(page.body, { headers: { ...SECURITY_HEADERS, 'content-type': page.type } });
  };
}
