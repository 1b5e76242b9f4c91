import { TEXTS, type TextFacts, type TextKind } from '../contract/text-kinds.ts';

/** Stands for what is not known. */
export const UNKNOWN = '—';

/** A place in a text that would not be filled in. */
export interface TextFault {
  /** From 1. */
  line: number;
  /** Place of the sign in its line, from 1. */
  sign: number;
  /** 'Line 3, sign 12: nothing fills {price}.' */
  sentence: string;
}

const PLACEHOLDER = /\{([^{}\n]*)\}/g;
const BRACES = /\{[^{}\n]*\}|[{}]/g;

/** The names that a kind of text knows. */
export function placeholdersOf(kind: TextKind): string[] {
  return TEXTS[kind].placeholders.map(({ name }) => name);
}

/** The known name somebody meant who typed another case or spaces. */
function meant(names: readonly string[], typed: string): string | undefined {
  const plain = typed.replace(/\s/g, '').toLowerCase();
  return names.find((name) => name.toLowerCase() === plain);
}

function faultOf(names: readonly string[], found: string): string | undefined {
  if (found === '{') return 'this brace is never closed on its line';
  if (found === '}') return 'this closing brace has no opening one before it';
  const typed = found.slice(1, -1);
  if (names.includes(typed)) return undefined;
  const near = meant(names, typed);
  return near === undefined ? `nothing fills ${found}` : `nothing fills ${found}; write {${near}}`;
}

/** Everything in a text that would be left unfilled, with its place; an empty list is a sound text. */
export function checkText(kind: TextKind, text: string): TextFault[] {
  const names = placeholdersOf(kind);
  return text.split('\n').flatMap((content, at) =>
    [...content.matchAll(BRACES)].flatMap((match) => {
      const fault = faultOf(names, match[0]);
      const sign = [...content.slice(0, match.index)].length + 1;
      return fault === undefined
        ? []
        : [{ line: at + 1, sign, sentence: `Line ${at + 1}, sign ${sign}: ${fault}.` }];
    }),
  );
}

/** What is wrong with a text as one message, with what can be used instead; undefined for a sound text. */
export function textRefusal(kind: TextKind, text: string): string | undefined {
  const faults = checkText(kind, text);
  if (faults.length === 0) return undefined;
  const known = placeholdersOf(kind).map((name) => `{${name}}`);
  const said = faults.map(({ sentence }) => sentence).join(' ');
  return `${said} What can be filled in is ${known.slice(0, -1).join(', ')} or ${known.at(-1)}.`;
}

/**
 * Fills a text in one pass, so that braces inside a title stay as they are. A placeholder that is not known is
 * left as typed; what is not known becomes a dash, or takes its line away where nothing in that line is known.
 */
export function fillText<K extends TextKind>(kind: K, text: string, facts: TextFacts<K>): string {
  const values = new Map(Object.entries<string>(facts).map(([name, value]) => [name, value.trim()]));
  const dash = TEXTS[kind].unknown === 'dash';
  const filled = text.split('\n').flatMap((line) => {
    const named = [...line.matchAll(PLACEHOLDER)].map((match) => values.get(match[1] ?? ''));
    const known = named.filter((value) => value !== undefined);
    if (!dash && known.length > 0 && known.every((value) => value === '')) return [];
    return [
      line.replace(PLACEHOLDER, (typed: string, name: string) => {
        const value = values.get(name);
        return value === undefined ? typed : value || (dash ? UNKNOWN : '');
      }),
    ];
  });
  const whole = filled.join('\n');
  // Lines that fell away leave no hole behind.
  return dash ? whole : whole.replace(/\n{3,}/g, '\n\n').trim();
}

/** The subject on one line, whatever the title holds, without the parts that are not known. */
export function fillSubject<K extends TextKind>(kind: K, text: string, facts: TextFacts<K>): string {
  return fillText(kind, text, facts)
    .replace(/\s+/g, ' ')
    .split(', ')
    .filter((part) => part !== UNKNOWN)
    .join(', ')
    .trim();
}
