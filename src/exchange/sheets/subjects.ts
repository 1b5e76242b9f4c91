import type { Contributor, Subject } from '../../contract/editions.ts';
import { ALL_ROLES, CONTRIBUTOR_ROLES } from '../../contract/terms.ts';
import { joinList, splitList } from './cells.ts';

/** 'Maren Oskarsdal (Author); Tobias Wrenfield (Foreword)'; a role without a plain name is written as its code. */
export function contributorsCell(contributors: readonly Contributor[]): string {
  return joinList(
    contributors.map(({ role, name }) => {
      const plain = CONTRIBUTOR_ROLES.find(({ code }) => code === role)?.name ?? role;
      return `${name} (${plain})`;
    }),
  );
}

const ROLE_WORDS: readonly (readonly [pattern: RegExp, role: string])[] = [
  [/^(?:written by|writer|text|by)$/i, 'A01'],
  [/^(?:illus\.?|ill\.?|illustrated by|illustrations|artist)$/i, 'A12'],
  [/^(?:ed\.?|eds\.?|edited by)$/i, 'B01'],
  [/^(?:tr\.?|trans\.?|translated by)$/i, 'B06'],
  [/^(?:foreword by)$/i, 'A23'],
  [/^(?:introduction by|intro\.?)$/i, 'A24'],
  [/^(?:photographer|photos?|photographs by)$/i, 'A13'],
  [/^(?:narrated by|narration)$/i, 'E03'],
  [/^(?:read by)$/i, 'E07'],
];

/** The List 17 code that a word in brackets stands for, or null. */
function roleOf(word: string): string | null {
  if (/^[A-Z]\d\d$/.test(word)) return word;
  const named = ({ name }: { name: string }) => name.toLowerCase() === word.toLowerCase();
  // Words of the trade before the rarer labels: an artist is mostly an illustrator.
  const usual =
    CONTRIBUTOR_ROLES.find(named)?.code ?? ROLE_WORDS.find(([pattern]) => pattern.test(word))?.[1];
  return usual ?? ALL_ROLES.find(named)?.code ?? null;
}

/** One name with its role in brackets; without one, or with brackets that are no role, the role is author. */
function contributorOf(part: string): Contributor {
  const bracketed = /^(.+?)\s*[([]([^()[\]]+)[)\]]$/.exec(part);
  const role = bracketed?.[2] === undefined ? null : roleOf(bracketed[2].trim());
  if (role !== null && bracketed?.[1] !== undefined) return { role, name: bracketed[1].trim() };
  return { role: 'A01', name: part.trim() };
}

/** The contributors of a cell, in order. */
export function readContributors(cell: string): Contributor[] {
  return splitList(cell).map(contributorOf);
}

/** 'thema:FBA = Modern fiction; bisac:FIC000000'. */
export function subjectsCell(subjects: readonly Subject[]): string {
  return joinList(
    subjects.map(({ scheme, code, heading }) => `${scheme}:${code}${heading === '' ? '' : ` = ${heading}`}`),
  );
}

/** The subjects of a cell; one without a scheme is told by its form, and is an own code where it has none. */
export function readSubjects(cell: string): Subject[] {
  return splitList(cell).map((part) => {
    const named = /^(thema|bisac|own)\s*:\s*(.+)$/is.exec(part);
    const [, code = part, heading = ''] = /^(.*?)\s+=\s+(.*)$/s.exec(named?.[2] ?? part) ?? [
      undefined,
      named?.[2] ?? part,
    ];
    const scheme = named?.[1]?.toLowerCase() as Subject['scheme'] | undefined;
    return { scheme: scheme ?? schemeOf(code), code: code.trim(), heading: heading.trim() };
  });
}

function schemeOf(code: string): Subject['scheme'] {
  if (/^[A-Z]{3}\d{6}$/.test(code)) return 'bisac';
  return /^[A-Z1-6][A-Z0-9]*(-[A-Z0-9]*)*$/.test(code) ? 'thema' : 'own';
}
