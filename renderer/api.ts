import {
  keepPreviousData,
  QueryClient,
  type UseQueryResult,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import type { InputOf, OperationName, OutputOf } from '../src/contract/index.ts';
import type { Answer } from '../src/contract/operation.ts';
import { announce } from './status.ts';
import { CallRefused, carry, subscribe } from './transport.ts';

export { CallRefused, subscribe };

/** Carries out one operation of the contract; throws `CallRefused` with code, message and field. */
export async function call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  // The transport has held the answer against the operation's own output schema.
  return (await carry(name, input)) as OutputOf<N>;
}

/** Answers stay fresh until a `changed` message or a command of this window says otherwise. */
export function makeQueryClient(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: { retry: false, staleTime: 60_000, refetchOnWindowFocus: false, networkMode: 'always' },
    },
  });
}

/** `keep` shows the former answer while a list is asked again under other terms; never use it for one record. */
export interface QueryOptions<N extends OperationName = OperationName> {
  enabled?: boolean;
  keep?: boolean;
  /** Asks again after so many milliseconds; false for no more. */
  again?: (data: OutputOf<N> | undefined) => number | false;
}

/** The answer of one query, kept and asked again whenever the catalogue changes. */
export function useQueryOf<N extends OperationName>(
  name: N,
  input: InputOf<N>,
  options: QueryOptions<N> = {},
): UseQueryResult<OutputOf<N>, CallRefused> {
  return useQuery<OutputOf<N>, CallRefused>({
    queryKey: [name, input],
    queryFn: () => call(name, input),
    enabled: options.enabled ?? true,
    ...(options.keep ? { placeholderData: keepPreviousData } : {}),
    ...(options.again ? { refetchInterval: ({ state }) => options.again?.(state.data) ?? false } : {}),
  });
}

/** What `useCommand` gives: `run` never throws, it answers. */
export interface Command<N extends OperationName> {
  /** `said` is announced when the command succeeds. */
  run(input: InputOf<N>, said?: string | ((value: OutputOf<N>) => string)): Promise<Answer<OutputOf<N>>>;
  pending: boolean;
  /** The last refusal, until the next run or `clear`. */
  refusal: CallRefused | undefined;
  /** The refusal's sentence if it concerns this input field. */
  errorOf(field: string): string | undefined;
  clear(): void;
}

function asRefusal(thrown: unknown): CallRefused {
  if (thrown instanceof CallRefused) return thrown;
  return new CallRefused({
    code: 'INTERNAL',
    message: thrown instanceof Error ? thrown.message : String(thrown),
  });
}

/** Commands that only change fields, so that they can be taken back right after (journal.undo). */
const TAKEN_BACK: ReadonlySet<string> = new Set<OperationName>([
  'works.update',
  'editions.update',
  'formats.update',
  'channels.update',
  'settings.update',
]);

/** The journal's number of the command just carried out, where it is one that can be taken back. */
async function undoOf(name: OperationName): Promise<number | undefined> {
  if (!TAKEN_BACK.has(name)) return undefined;
  const newest = await call('journal.list', { count: 1 }).catch(() => undefined);
  const entry = newest?.entries[0];
  return entry?.operation === name ? entry.commandSeq : undefined;
}

/** One command of the contract with its pending and refused state; success and refusal are announced. */
export function useCommand<N extends OperationName>(name: N): Command<N> {
  const client = useQueryClient();
  const [pending, setPending] = useState(false);
  const [refusal, setRefusal] = useState<CallRefused>();
  const run = useCallback<Command<N>['run']>(
    async (input, said) => {
      setPending(true);
      setRefusal(undefined);
      try {
        const value = await call(name, input);
        await client.invalidateQueries();
        if (said !== undefined)
          announce(typeof said === 'function' ? said(value) : said, 'done', await undoOf(name));
        return { ok: true, value };
      } catch (thrown) {
        const refused = asRefusal(thrown);
        setRefusal(refused);
        announce(refused.message, 'refused');
        return { ok: false, error: bodyOf(refused) };
      } finally {
        setPending(false);
      }
    },
    [client, name],
  );
  const clear = useCallback(() => setRefusal(undefined), []);
  const errorOf = (field: string) => (refusal?.field === field ? refusal.message : undefined);
  return { run, pending, refusal, errorOf, clear };
}

/** The window's own codes have no place in the contract's `Answer`; to the caller they are trouble inside. */
function bodyOf(refused: CallRefused): Extract<Answer<never>, { ok: false }>['error'] {
  const code = refused.code === 'KEY_ENDED' || refused.code === 'UNREACHABLE' ? 'INTERNAL' : refused.code;
  return { code, message: refused.message, ...(refused.field === undefined ? {} : { field: refused.field }) };
}
