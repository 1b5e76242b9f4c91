import { type ReactNode, useRef, useState } from 'react';
import { Link } from 'wouter';
import { useReadOnly } from '../../../read-only.ts';
import { Button } from '../../../ui/index.ts';
import { HelpLink } from '../../help/help-link.tsx';
import { RecordBlockDialog } from '../../numbers/record-block-dialog.tsx';
import { NewWorkDialog } from '../../work/new-work-dialog.tsx';
import { FormatStep } from './format-step.tsx';
import { NamesForm } from './names-form.tsx';
import { START_STEPS, type Start, type StartStep } from './use-start.ts';
import './start.css';

const WORDS: Record<StartStep, { title: string; text: string }> = {
  names: {
    title: 'Name your publisher and imprint',
    text: 'New editions and removal requests take them from here. Settings changes them later.',
  },
  block: {
    title: 'Record your ISBNs',
    text: 'Enter the prefix of a block you bought, or any one of its numbers; the rest follows from it.',
  },
  work: {
    title: 'Make your first work',
    text: 'A title is enough to begin; it is recorded with its first edition.',
  },
  format: {
    title: 'Add its first format, with a number',
    text: 'A paperback, an e-book, an audiobook: each takes a number of its own, for ever.',
  },
};

interface StepProps {
  step: StartStep;
  start: Start;
  children: ReactNode;
}

/** One step: its standing by word and mark, and what is done about it while it is the next. */
function Step({ step, start, children }: StepProps) {
  const { title, text } = WORDS[step];
  const done = start.done[step];
  const skipped = start.isSkipped(step);
  const word = done ? 'done' : skipped ? 'skipped' : start.next === step ? 'next' : 'to do';
  return (
    <li className={`start-step start-${word.replace(' ', '-')}`}>
      <h3>
        <span className="start-mark" aria-hidden="true">
          {done ? '✓' : skipped ? '–' : START_STEPS.indexOf(step) + 1}
        </span>
        {title} <span className="start-word">{word}</span>
      </h3>
      {done ? null : (
        <div className="start-body">
          <p>{text}</p>
          {skipped ? null : children}
          <Button kind="quiet" onClick={() => start.skip(step)}>
            {skipped ? 'Do this step after all' : 'Skip this step'}
            <span className="visually-hidden">: {title}</span>
          </Button>
        </div>
      )}
    </li>
  );
}

/** From the empty catalogue to a first format with its number; every step can be skipped, and all of it put away. */
export function GuidedStart({ start }: { start: Start }) {
  const readOnly = useReadOnly();
  const heading = useRef<HTMLHeadingElement>(null);
  const [open, setOpen] = useState<'block' | 'work'>();
  // The button that opened a dialog goes with its step; reading goes on from the heading.
  const settle = () => {
    setOpen(undefined);
    window.setTimeout(() => {
      if (document.activeElement === document.body)
        (heading.current ?? document.querySelector('h1'))?.focus();
    }, 150);
  };
  const still = { disabled: readOnly !== undefined, reason: readOnly };
  return (
    <section className="start" aria-labelledby="start-title">
      <div className="start-head">
        <h2 id="start-title" ref={heading} tabIndex={-1}>
          Guided start
        </h2>
        <HelpLink topic="course" />
        <Button kind="quiet" onClick={() => start.putAway()}>
          Put the guide away
        </Button>
      </div>
      <ol>
        <Step step="names" start={start}>
          {start.settings ? <NamesForm settings={start.settings} readOnly={readOnly} /> : null}
        </Step>
        <Step step="block" start={start}>
          <Button kind="primary" {...still} onClick={() => setOpen('block')}>
            Record a block…
          </Button>
          <p className="soft">
            Or take over the agency’s list on the <Link href="/numbers">Numbers</Link> screen.
          </p>
        </Step>
        <Step step="work" start={start}>
          <Button kind="primary" {...still} onClick={() => setOpen('work')}>
            Record a work…
          </Button>
        </Step>
        <Step step="format" start={start}>
          <FormatStep work={start.work} hasBlock={start.done.block} readOnly={readOnly} onClosed={settle} />
        </Step>
      </ol>
      <RecordBlockDialog open={open === 'block'} onClose={settle} onDone={settle} />
      <NewWorkDialog open={open === 'work'} onClose={settle} onCreated={settle} />
    </section>
  );
}
