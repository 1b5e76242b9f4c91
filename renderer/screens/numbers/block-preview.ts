import { useEffect, useState } from 'react';
import type { BlockResult } from '../../../src/rules/isbn/index.ts';

/** What a typed prefix or number would be as a block, its first and last number hyphenated; undefined while nothing is typed. */
export function useBlockPreview(text: string): BlockResult | undefined {
  const [result, setResult] = useState<BlockResult>();
  useEffect(() => {
    if (text.trim() === '') {
      setResult(undefined);
      return;
    }
    let late = false;
    // The range table is large, so it is fetched when the first prefix is typed.
    void import('../../../src/rules/isbn/index.ts').then(({ parseBlock, shownIsbn }) => {
      if (late) return;
      const parsed = parseBlock(text);
      setResult(
        parsed.ok
          ? {
              ok: true,
              block: {
                ...parsed.block,
                first: shownIsbn(parsed.block.first),
                last: shownIsbn(parsed.block.last),
              },
            }
          : parsed,
      );
    });
    return () => {
      late = true;
    };
  }, [text]);
  return result;
}
