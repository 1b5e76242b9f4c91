import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { CallRefused, call } from '../../api.ts';
import { announce } from '../../status.ts';
import type { Mending } from './words.ts';

/** Carries out what a finding offers; what came of it, or why nothing did, is announced. */
export function useMending(): { run: (mending: Mending) => Promise<boolean>; pending: boolean } {
  const client = useQueryClient();
  const [pending, setPending] = useState(false);
  const run = async ({ operation, input, does }: Mending) => {
    setPending(true);
    try {
      await call(operation, input);
      await client.invalidateQueries();
      announce(`Done: ${does} The Journal can undo it while it is the last change.`);
      return true;
    } catch (thrown) {
      announce(thrown instanceof CallRefused ? thrown.message : String(thrown), 'refused');
      return false;
    } finally {
      setPending(false);
    }
  };
  return { run, pending };
}
