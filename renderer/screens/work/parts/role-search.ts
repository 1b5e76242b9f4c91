import { ALL_ROLES } from '../../../../src/contract/terms.ts';

/** A role of ONIX List 17 with its plain label. */
export interface Role {
  code: string;
  name: string;
}

/** The form of every code of List 17: a capital letter and two figures. */
const CODE = /^[A-Z]\d\d$/;

/** Whether a text has the form of a role's code; whether the list holds it is not known here. */
export function isRoleCode(text: string): boolean {
  return CODE.test(text);
}

function rank({ code, name }: Role, words: readonly string[]): number | undefined {
  const label = name.toLowerCase();
  if (words.length === 1 && code.toLowerCase().startsWith(words[0] ?? '')) return 0;
  if (!words.every((word) => label.includes(word))) return undefined;
  if (label.startsWith(words[0] ?? '')) return 1;
  return words.every((word) => label.split(/[\s-]/).some((part) => part.startsWith(word))) ? 2 : 3;
}

/** The roles that a typed text may mean, by code or by words of the label in any order, the nearest first. */
export function searchRoles(text: string): Role[] {
  const words = text
    .toLowerCase()
    .split(/[\s,()–-]+/)
    .filter((word) => word !== '');
  if (words.length === 0) return [...ALL_ROLES];
  return ALL_ROLES.map((role) => ({ role, rank: rank(role, words) }))
    .filter((found): found is { role: Role; rank: number } => found.rank !== undefined)
    .sort((a, b) => a.rank - b.rank)
    .map(({ role }) => role);
}

/** The code that a typed text is exactly: a code in either case, or a whole label. Anything else stays as typed. */
export function settledRole(text: string): string {
  const plain = text.trim();
  if (isRoleCode(plain.toUpperCase())) return plain.toUpperCase();
  return ALL_ROLES.find(({ name }) => name.toLowerCase() === plain.toLowerCase())?.code ?? plain;
}

/** 'Translator (B06)', 'B97' for a code without a label here, or the text as it was typed. */
export function roleText(value: string): string {
  const role = ALL_ROLES.find(({ code }) => code === value);
  return role ? `${role.name} (${role.code})` : value;
}

/** What is wrong with a role as it stands, while a form is filled in; nothing where it is empty. */
export function roleProblem(value: string): string | undefined {
  if (value === '' || isRoleCode(value)) return undefined;
  return 'Choose a role from the list, or write its code: a capital letter and two figures, such as B06.';
}
