import { type KeyboardEvent, useEffect, useEffectEvent, useState } from 'react';
import { useLocation } from 'wouter';
import { useQueryOf } from '../../api.ts';
import { useAsOf } from '../../location.ts';
import { noteRecent, recentVisits } from '../../recent.ts';
import { foundGroups, type Option, type OptionGroup, recentGroup, screensFor } from './options.ts';

const SETTLE_MS = 90;

/** A text a moment after its last change. */
function useSettled(text: string): string {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = window.setTimeout(() => setSettled(text), SETTLE_MS);
    return () => window.clearTimeout(timer);
  }, [text]);
  return settled;
}

export interface Finder {
  text: string;
  type: (text: string) => void;
  open: boolean;
  show: () => void;
  close: () => void;
  groups: OptionGroup[];
  /** The options of all groups in order. */
  options: Option[];
  /** Place of the option that Enter opens, or -1. */
  at: number;
  choose: (option: Option) => void;
  /** Asked and answered: what is shown belongs to what is typed. */
  settled: boolean;
  onKeyDown: (event: KeyboardEvent) => void;
}

function step(key: string, at: number, count: number): number | undefined {
  if (count === 0) return undefined;
  if (key === 'ArrowDown') return (at + 1) % count;
  if (key === 'ArrowUp') return at <= 0 ? count - 1 : at - 1;
  return undefined;
}

/** What a text finds, a moment after its last key; before anything is typed, the places visited last. */
function useFound(text: string, open: boolean) {
  const { asOf } = useAsOf();
  const typed = text.trim().slice(0, 200);
  const asked = useSettled(typed);
  const answer = useQueryOf(
    'search.find',
    { text: asked, asOf },
    { enabled: open && asked !== '', keep: true },
  );
  if (typed === '') return { groups: open ? recentGroup(recentVisits()) : [], settled: true };
  return {
    groups: answer.data ? foundGroups(typed, answer.data, screensFor(typed)) : [],
    settled: asked === typed && !answer.isPlaceholderData && !answer.isPending,
  };
}

/** Carries Enter out: at once, or when the answer comes if it was pressed before. */
function useEnter(settled: boolean, act: () => void) {
  const [hasty, setHasty] = useState(false);
  const carryOut = useEffectEvent(act);
  useEffect(() => {
    if (!hasty || !settled) return;
    setHasty(false);
    carryOut();
  }, [hasty, settled]);
  return setHasty;
}

/** What is typed into the search box of the window, what it finds and where the keys are. */
export function useFinder(): Finder {
  const [, navigate] = useLocation();
  const [text, setText] = useState('');
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(-1);
  const { groups, settled } = useFound(text, open);
  const options = groups.flatMap((group) => group.options);
  const close = () => {
    setOpen(false);
    setAt(-1);
  };
  const choose = (option: Option) => {
    noteRecent({ to: option.to, label: option.label, kind: option.kind });
    setText('');
    close();
    navigate(option.to);
  };
  const press = useEnter(settled, () => {
    const option = options[at];
    if (option) choose(option);
  });
  const onKeyDown = (event: KeyboardEvent) => {
    const next = step(event.key, at, options.length);
    if (next !== undefined) {
      setOpen(true);
      setAt(next);
    } else if (event.key === 'Enter') press(at >= 0);
    else if (event.key === 'Escape' && (open || text !== '')) {
      if (!open) setText('');
      close();
    } else return;
    event.preventDefault();
  };
  const type = (next: string) => {
    setText(next);
    press(false);
    setOpen(true);
    setAt(next.trim() === '' ? -1 : 0);
  };
  const show = () => setOpen(true);
  return {
    text,
    type,
    open,
    show,
    close,
    groups,
    options,
    at: Math.min(at, options.length - 1),
    settled,
    choose,
    onKeyDown,
  };
}
