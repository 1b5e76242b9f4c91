import { useState } from 'react';
import { CallRefused, call } from '../../../api.ts';
import { announce } from '../../../status.ts';
import { foundInWords, type OwnedList } from './list.ts';

/** A list as it was read: its text, where it came from, and what is in it. */
export interface ReadList {
  text: string;
  /** Name of the file; undefined where the text was pasted. */
  fileName: string | undefined;
  found: OwnedList;
}

/** Reads a list without recording anything; a refusal leaves no list behind. */
export function useList() {
  const [list, setList] = useState<ReadList>();
  const [refusal, setRefusal] = useState<CallRefused>();
  const [pending, setPending] = useState(false);
  const read = async (text: string, fileName: string | undefined) => {
    setPending(true);
    setRefusal(undefined);
    try {
      const found = await call('blocks.readList', { text });
      setList({ text, fileName, found });
      announce(foundInWords(found));
    } catch (thrown) {
      setList(undefined);
      setRefusal(
        thrown instanceof CallRefused
          ? thrown
          : new CallRefused({ code: 'INTERNAL', message: String(thrown) }),
      );
    }
    setPending(false);
  };
  return { list, refusal, pending, read, forget: () => setList(undefined) };
}
