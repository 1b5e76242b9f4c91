import { useEffect, useState } from 'react';
import { sendFile } from '../../../lib/staged.ts';

/** Lays a file ready once, when it is chosen, and says so; answers its id as soon as it lies there. */
export function useSentFile(file: File, onReady: (id: string) => void): string | undefined {
  const [staged, setStaged] = useState<string>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a file is sent once, when it is chosen.
  useEffect(() => {
    let left = false;
    void sendFile(file).then((id) => {
      if (left) return;
      setStaged(id);
      onReady(id);
    });
    return () => {
      left = true;
    };
  }, [file]);
  return staged;
}
