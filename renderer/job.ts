import { useEffect, useRef, useState } from 'react';
import type { JobProgress, Progress } from '../src/contract/jobs.ts';
import { subscribe } from './api.ts';
import { callOff } from './transport.ts';

/** Long work as the person follows it. */
export interface FollowedJob {
  cancel(): void;
  /** How far it has come; undefined before the first word and when nothing is under way. */
  progress: Progress | undefined;
  running: boolean;
  /** Whether it is being called off. */
  cancelling: boolean;
}

/** A piece of long work: its name goes into the operation's input, and how far it has come is heard here. */
export interface Job extends FollowedJob {
  /** A fresh name; work under it is then followed. */
  begin(): string;
  end(): void;
}

/** Follows one piece of long work at a time. Leaving the view calls it off. */
export function useJob(): Job {
  const name = useRef<string>(undefined);
  const [progress, setProgress] = useState<JobProgress>();
  const [running, setRunning] = useState(false);
  const [cancelling, setCancelling] = useState(false);
  useEffect(() => {
    const stop = subscribe('progress', (data) => {
      const told = data as JobProgress | undefined;
      if (told !== undefined && told.job === name.current) setProgress(told);
    });
    return () => {
      stop();
      if (name.current !== undefined) void callOff(name.current);
    };
  }, []);
  return {
    begin: () => {
      name.current = crypto.randomUUID();
      setProgress(undefined);
      setCancelling(false);
      setRunning(true);
      return name.current;
    },
    end: () => {
      name.current = undefined;
      setRunning(false);
      setProgress(undefined);
    },
    cancel: () => {
      setCancelling(true);
      if (name.current !== undefined) void callOff(name.current);
    },
    progress,
    running,
    cancelling,
  };
}
