import { TEXTS } from './text/index.ts';
import type { Block, HelpSection } from './text/types.ts';
import { TOPIC_IDS, TOPICS, type TopicId } from './topics.ts';

export interface Hit {
  topic: TopicId;
  section: HelpSection;
  /** The sentences around the first word that was found. */
  excerpt: string;
}

function wordsOf(block: Block): string[] {
  if (typeof block === 'string') return [block];
  if ('list' in block) return [...block.list];
  if ('steps' in block) return [...block.steps];
  if ('terms' in block) return block.terms.map(([term, meaning]) => `${term}: ${meaning}`);
  return [];
}

/** Letters alone, without case and accents. */
function folded(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();
}

/** The sections that hold every word typed, those whose heading or page bears one first. */
export function searchHelp(typed: string): Hit[] {
  const words = folded(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const hits = TOPIC_IDS.flatMap((topic) =>
    TEXTS[topic].sections.flatMap((section) => {
      const head = folded(`${TOPICS[topic].title} ${section.heading}`);
      const parts = section.blocks.flatMap(wordsOf);
      const all = `${head} ${folded(parts.join(' '))}`;
      if (!words.every((word) => all.includes(word))) return [];
      const excerpt =
        parts.find((part) => words.some((word) => folded(part).includes(word))) ?? parts[0] ?? '';
      return [{ topic, section, excerpt, inHead: words.filter((word) => head.includes(word)).length }];
    }),
  );
  return hits
    .toSorted((a, b) => b.inHead - a.inHead)
    .map(({ topic, section, excerpt }) => ({ topic, section, excerpt }));
}
