/** Fonts may lie on the network, everything else that styles fetch may not (EPUB 3.3, remote resources). */
const FETCH =
  /@import\s+(?:url\(\s*)?["']?((?:https?:)?\/\/[^"')\s;]{1,300})|url\(\s*["']?((?:https?:)?\/\/[^"')\s]{1,300})/gi;
const FONT = /\.(?:otf|ttf|woff2?)(?:[?#]|$)/i;

/** Addresses on the network that a style sheet fetches pictures or styles from. */
export function remoteInStyles(css: string): string[] {
  const bare = css.replaceAll(/\/\*[\s\S]*?\*\//g, ' ');
  return [...bare.matchAll(FETCH)]
    .map((match) => match[1] ?? match[2] ?? '')
    .filter((href) => !FONT.test(href))
    .slice(0, 20);
}
