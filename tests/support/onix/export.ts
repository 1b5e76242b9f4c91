import type { InputOf } from '../../../src/contract/index.ts';
import type { TestCatalogue } from '../catalogue.ts';

type Message = NonNullable<InputOf<'exports.make'>['onix']> & {
  content?: 'full' | 'registration';
  workId?: number;
};

export const FORMS = (['3.1', '3.0'] as const).flatMap((version) =>
  (['reference', 'short'] as const).map((tags) => ({ version, tags })),
);

/** The text of a file that lies ready. */
export function fetched(catalogue: TestCatalogue, file: string): string {
  const parts: Buffer[] = [];
  for (let from: number | null = 0; from !== null; ) {
    const answer: { part: string; next: number | null } = catalogue.call('files.get', { file, from });
    parts.push(Buffer.from(answer.part, 'base64'));
    from = answer.next;
  }
  return Buffer.concat(parts).toString('utf8');
}

/** A whole message. */
export function exported(
  catalogue: TestCatalogue,
  { content = 'full', workId, ...onix }: Message = {},
): string {
  const as = content === 'full' ? 'onix' : 'agency-onix';
  const made = catalogue.call('exports.make', { as, onix, ...(workId === undefined ? {} : { workId }) });
  return fetched(catalogue, made.file);
}
