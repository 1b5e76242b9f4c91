import { useEffect, useRef, useState } from 'react';
import { CallRefused } from '../../../api.ts';
import type { FollowedJob } from '../../../job.ts';
import { sendFile } from '../../../lib/staged.ts';
import { announce } from '../../../status.ts';

/** A file on its way to the catalogue. */
export interface SentFile {
  /** Its id, as soon as it lies ready. */
  staged: string | undefined;
  /** The sending, followed like other long work. */
  job: FollowedJob;
  refusal: CallRefused | undefined;
  /** Whether the person called the sending off. */
  calledOff: boolean;
}

const MEGABYTE = 1_000_000;
const megabytes = (bytes: number) => Math.ceil(bytes / MEGABYTE);

const refusalOf = (thrown: unknown, file: File) =>
  thrown instanceof CallRefused
    ? thrown
    : new CallRefused({
        code: 'INTERNAL',
        message: `${file.name} cannot be read; see that it is still there and choose it again.`,
      });

/** Lays a file ready once, when it is chosen, and says so. Leaving the view ends the sending. */
export function useSentFile(file: File, onReady: (id: string) => void): SentFile {
  const [staged, setStaged] = useState<string>();
  const [bytes, setBytes] = useState<number>();
  const [refusal, setRefusal] = useState<CallRefused>();
  const [calledOff, setCalledOff] = useState(false);
  const sending = useRef<AbortController>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a file is sent once, when it is chosen.
  useEffect(() => {
    const controller = new AbortController();
    const { signal } = controller;
    sending.current = controller;
    setBytes(0);
    sendFile(file, { onSent: setBytes, signal }).then(
      (id) => {
        if (signal.aborted) return;
        setBytes(undefined);
        setStaged(id);
        onReady(id);
      },
      (thrown: unknown) => {
        if (signal.aborted) return;
        setBytes(undefined);
        const refused = refusalOf(thrown, file);
        setRefusal(refused);
        announce(refused.message, 'refused');
      },
    );
    return () => controller.abort();
  }, [file]);
  const total = megabytes(file.size);
  const progress = { done: megabytes(bytes ?? 0), total, what: 'MB' };
  return {
    staged,
    refusal,
    calledOff,
    job: {
      running: bytes !== undefined,
      cancelling: false,
      progress: total > 1 ? progress : undefined,
      cancel: () => {
        sending.current?.abort();
        setBytes(undefined);
        setCalledOff(true);
        announce('Called off; nothing was changed.');
      },
    },
  };
}
