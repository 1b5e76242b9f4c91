import { useEffect, useRef, useState } from 'react';
import type { MadeFile } from '../../../../src/contract/files.ts';
import { call } from '../../../api.ts';
import type { FollowedJob } from '../../../job.ts';
import { saveFile } from '../../../lib/save-file.ts';
import { fetchFile } from '../../../lib/staged.ts';
import { announce } from '../../../status.ts';

const MEGABYTE = 1_000_000;
const megabytes = (bytes: number) => Math.ceil(bytes / MEGABYTE);

/** Hands a file that the catalogue has made to the person, followed like other long work. */
export function useFetchedFile(): { save: (made: MadeFile) => Promise<boolean>; job: FollowedJob } {
  const [got, setGot] = useState<{ bytes: number; of: number }>();
  const fetching = useRef<AbortController>(undefined);
  useEffect(() => () => fetching.current?.abort(), []);
  /** Answers whether the file was saved; it was not when that was called off. */
  const save = async ({ file, name, type, bytes: of }: MadeFile): Promise<boolean> => {
    const controller = new AbortController();
    const { signal } = controller;
    fetching.current = controller;
    setGot({ bytes: 0, of });
    try {
      saveFile(name, await fetchFile(file, type, { onFetched: (bytes) => setGot({ bytes, of }), signal }));
      return true;
    } catch (error) {
      if (!signal.aborted) throw error;
      void call('files.drop', { file });
      return false;
    } finally {
      setGot(undefined);
    }
  };
  const total = megabytes(got?.of ?? 0);
  return {
    save,
    job: {
      running: got !== undefined,
      cancelling: false,
      progress: total > 1 ? { done: megabytes(got?.bytes ?? 0), total, what: 'MB' } : undefined,
      cancel: () => {
        fetching.current?.abort();
        announce('Called off; no file was saved.');
      },
    },
  };
}
