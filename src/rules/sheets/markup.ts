import type { Markup } from '../../contract/submissions.ts';

/** Elements of simple HTML, which most forms that take any markup take; common practice, no source. */
const SIMPLE = ['p', 'br', 'b', 'strong', 'i', 'em', 'ul', 'ol', 'li'];

const TAG = /<(\/?)([a-z][a-z0-9]*)\b([^<>]*)>/gi;
const ENTITY = /&(#\d+|#x[0-9a-f]+|[a-z][a-z0-9]*);/i;

interface Tag {
  text: string;
  name: string;
  closes: boolean;
  attributes: string;
}

function tagsOf(text: string): Tag[] {
  return [...text.matchAll(TAG)].map((match) => ({
    text: match[0],
    name: (match[2] ?? '').toLowerCase(),
    closes: match[1] === '/',
    attributes: (match[3] ?? '').replace('/', '').trim(),
  }));
}

/** Whether a text holds tags or character references of HTML. */
export function hasMarkup(text: string): boolean {
  return tagsOf(text).length > 0 || ENTITY.test(text);
}

/** The first tag that is left open or closes nothing, as typed; null when all pair up. */
function unpaired(tags: readonly Tag[]): string | null {
  const open: Tag[] = [];
  for (const tag of tags) {
    if (tag.name === 'br') continue;
    if (!tag.closes) open.push(tag);
    else if (open.pop()?.name !== tag.name) return tag.text;
  }
  return open.at(-1)?.text ?? null;
}

/** What of a description's markup a channel would not take; null when it takes all of it. */
export function forbiddenMarkup(text: string, taken: Markup, channelName: string): string | null {
  if (taken === 'any') return null;
  const tags = tagsOf(text);
  if (taken === 'none') {
    const found = tags[0]?.text ?? ENTITY.exec(text)?.[0];
    return found === undefined ? null : `${channelName} takes no markup; take ${found} and the like out.`;
  }
  const strange = tags.find((tag) => !SIMPLE.includes(tag.name) || tag.attributes !== '');
  if (strange)
    return `${channelName} takes simple HTML only (${SIMPLE.join(', ')}, without attributes); take ${strange.text} out.`;
  const odd = unpaired(tags);
  return odd === null ? null : `${odd} has no tag that pairs with it.`;
}
