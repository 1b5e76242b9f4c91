import { useQueries } from '@tanstack/react-query';
import { PICTURES_AT_ONCE } from '../../../../src/contract/proof-checks/checks.ts';
import { call } from '../../../api.ts';

/** Pictures of pages as addresses for `img`, by page; those still on their way are missing. */
export function usePictures(checkId: number, pages: readonly number[]): ReadonlyMap<number, string> {
  const groups = Array.from({ length: Math.ceil(pages.length / PICTURES_AT_ONCE) }, (_, index) =>
    pages.slice(index * PICTURES_AT_ONCE, (index + 1) * PICTURES_AT_ONCE),
  );
  return useQueries({
    queries: groups.map((group) => {
      const input = { checkId, pages: group };
      return {
        queryKey: ['proofChecks.pictures', input],
        // What is kept of a check never changes.
        staleTime: Number.POSITIVE_INFINITY,
        queryFn: () => call('proofChecks.pictures', input),
      };
    }),
    combine: (answers) =>
      new Map(
        answers.flatMap(({ data }) =>
          (data?.pictures ?? []).map(({ page, png }) => [page, `data:image/png;base64,${png}`] as const),
        ),
      ),
  });
}
