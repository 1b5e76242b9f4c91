/** Whether a reference leads to the network or to data of its own rather than into the archive. */
export const isRemote = (href: string) => /^(?:https?|ftp|rtsp|rtmp):|^\/\//i.test(href);

/** Whether a reference names another scheme: data:, mailto:, javascript:. */
const hasScheme = (href: string) => /^[a-z][a-z0-9+.-]*:/i.test(href);

function decodePart(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/**
 * The name in the archive that a reference in the file `from` leads to, without its fragment; null where it leads outside,
 * to the network, or nowhere (OCF 3.3, relative URLs).
 */
export function inArchive(from: string, href: string): string | null {
  const [path = ''] = href.split(/[#?]/);
  if (path === '' || isRemote(path) || hasScheme(path)) return null;
  const parts = path.startsWith('/') ? [] : from.split('/').slice(0, -1);
  for (const part of path.split('/').filter((one) => one !== '' && one !== '.')) {
    if (part !== '..') parts.push(decodePart(part));
    else if (parts.pop() === undefined) return null;
  }
  return parts.join('/');
}
