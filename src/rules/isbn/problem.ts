import type { IsbnProblem, IsbnProblemCode, RefusedIsbn } from './types.ts';

/** A refusal; what is not given is null. */
export function refuse(
  code: IsbnProblemCode,
  message: string,
  more: Partial<Pick<IsbnProblem, 'hint' | 'position' | 'repair'>> = {},
): RefusedIsbn {
  const { hint = null, position = null, repair = null } = more;
  return { ok: false, problem: { code, message, hint, position, repair } };
}

/** 'at character 5': people count from one, positions from zero. */
export function atCharacter(position: number): string {
  return `at character ${position + 1}`;
}

/** The hint that goes with an offered repair. */
export function askWhether(repair: string): string {
  return `Is it ${repair}? Compare with the source before taking it.`;
}
