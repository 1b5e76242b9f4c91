import { useLayoutEffect, useRef } from 'react';
import { useCommand } from '../api.ts';
import { dismissStatus, type StatusMessage, useStatus } from '../status.ts';
import { Button, IconButton } from '../ui/index.ts';
import { NoticeShape } from '../ui/standing-shapes.tsx';

/** Styles keep this much clear at the foot of the window. */
const HEIGHT = '--status-height';

/** Takes the change back that the message tells of; once something else was changed, the journal refuses. */
function Undo({ commandSeq }: { commandSeq: number }) {
  const undo = useCommand('journal.undo');
  return (
    <Button
      kind="quiet"
      label="Undo this change"
      pending={undo.pending}
      onClick={() => void undo.run({ commandSeq }, 'The change is undone.')}
    >
      Undo
    </Button>
  );
}

function Line({ status }: { status: StatusMessage }) {
  const line = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const element = line.current;
    if (!element) return;
    const root = document.documentElement;
    const observer = new ResizeObserver(() => {
      root.style.setProperty(HEIGHT, `${element.offsetHeight}px`);
      // What has the focus may lie where the line has just appeared.
      const focused = document.activeElement;
      if (focused instanceof HTMLElement && focused.matches('main *') && !element.contains(focused))
        focused.scrollIntoView({ block: 'nearest' });
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
      root.style.removeProperty(HEIGHT);
    };
  }, []);
  return (
    <section ref={line} aria-label="Latest message" className={`status-line status-${status.tone}`}>
      <NoticeShape tone={status.tone === 'done' ? 'done' : 'stop'} />
      <p>{status.text}</p>
      {status.undo === undefined ? null : <Undo commandSeq={status.undo} />}
      <IconButton sign="close" label="Dismiss the message" labelHidden onClick={dismissStatus} />
    </section>
  );
}

/** The last message, at the foot of the window; the live regions read it out. */
export function StatusLine() {
  const status = useStatus();
  return status ? <Line key={status.id} status={status} /> : null;
}
