import { useEffect, useRef, useState } from 'react';
import type { OutputOf } from '../../src/contract/index.ts';
import { Button, Notice } from '../ui/index.ts';
import { recallPutAway, rememberPutAway, stillPutAway } from './put-away.ts';

/** Which warnings of a catalogue were put away, and how to put another one away. */
function usePutAway({ file, warnings }: OutputOf<'catalogue.info'>) {
  const [away, setAway] = useState(() => recallPutAway(file));
  useEffect(() => {
    const still = stillPutAway(away, warnings);
    rememberPutAway(file, still);
    if (still.length < away.length) setAway(still);
  }, [file, away, warnings]);
  return { away, putAway: (text: string) => setAway([...away, text]) };
}

/**
 * What the user should know about the open file, above the screen. Each can be put away until it changes; in a
 * catalogue open for reading only they stay, since one of them says why.
 */
export function Warnings({ info }: { info: OutputOf<'catalogue.info'> }) {
  const { away, putAway } = usePutAway(info);
  const box = useRef<HTMLElement>(null);
  const shown = info.readOnly ? info.warnings : info.warnings.filter((text) => !away.includes(text));
  if (shown.length === 0) return null;
  const close = (text: string) => {
    putAway(text);
    // The button goes with its notice; the screen takes the focus.
    box.current?.closest('main')?.focus();
  };
  return (
    <section className="warnings" aria-label="About this catalogue file" ref={box}>
      {shown.map((text) => (
        <Notice
          key={text}
          tone="care"
          action={
            info.readOnly ? undefined : (
              <Button kind="quiet" label={`Put away: ${text}`} onClick={() => close(text)}>
                Put away
              </Button>
            )
          }
        >
          {text}
        </Notice>
      ))}
    </section>
  );
}
