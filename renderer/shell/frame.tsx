import { type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { useQueryOf } from '../api.ts';
import { noteCatalogue } from '../recent.ts';
import { useTheme } from '../theme.ts';
import { IconButton, Refused } from '../ui/index.ts';
import { LiveRegions } from '../ui/live-regions.tsx';
import { AsOfControl } from './as-of.tsx';
import { Banners } from './banners.tsx';
import { useDroppedCatalogue, useGoMenu } from './desktop.ts';
import { useDueNotices } from './due-notices.ts';
import { Finder } from './finder/finder.tsx';
import { HistoryButtons } from './history-buttons.tsx';
import { useKeptFocus } from './kept-focus.ts';
import { KeysDialog } from './keys-dialog.tsx';
import { LinkLost } from './link-lost.tsx';
import { Brand, Contents } from './navigation.tsx';
import { noteVisit } from './screens.ts';
import { useShortcuts } from './shortcuts.ts';
import { StatusLine } from './status-line.tsx';
import { Warnings } from './warnings.tsx';

/** The side of the window: open on wide windows, behind a button on narrow ones. */
function Side() {
  const [open, setOpen] = useState(false);
  return (
    <nav className={open ? 'side side-open' : 'side'} aria-label="Screens">
      <div className="side-bar">
        <Brand />
        <div className="side-menu">
          <IconButton
            sign={open ? 'close' : 'menu'}
            label="Menu"
            expanded={open}
            controls="screens"
            onClick={() => setOpen(!open)}
          />
        </div>
      </div>
      <Contents id="screens" onMove={() => setOpen(false)} />
    </nav>
  );
}

/** Everything around a screen: navigation, running head, banners, status line, keys. */
export function Frame({ children }: { children: ReactNode }) {
  const [path] = useLocation();
  const info = useQueryOf('catalogue.info', {});
  const settings = useQueryOf('settings.get', {});
  const [keysOpen, setKeysOpen] = useState(false);
  const showKeys = useCallback(() => setKeysOpen(true), []);
  const main = useRef<HTMLElement>(null);
  useShortcuts(showKeys);
  useKeptFocus();
  useGoMenu();
  useDroppedCatalogue();
  useDueNotices();
  useTheme(settings.data?.theme);
  useEffect(() => noteVisit(path), [path]);
  useEffect(() => noteCatalogue(info.data?.file ?? ''), [info.data?.file]);
  return (
    <div className="window">
      <button type="button" className="skip" onClick={() => main.current?.focus()}>
        Skip to the screen
      </button>
      <Side />
      <div className="sheet">
        <header>
          <div className="running-head">
            <HistoryButtons />
            <p className="running-title" title={info.data?.file}>
              {info.data?.name ?? ' '}
            </p>
            <Finder />
            <AsOfControl today={info.data?.today} />
            <IconButton sign="keys" label="Keys" onClick={showKeys} />
          </div>
          <Banners info={info.data} />
        </header>
        <main id="screen" tabIndex={-1} ref={main}>
          {info.data ? <Warnings key={info.data.file} info={info.data} /> : null}
          <Refused refusal={info.error} />
          {children}
        </main>
        <StatusLine />
      </div>
      <KeysDialog open={keysOpen} onClose={() => setKeysOpen(false)} />
      <LinkLost />
      <LiveRegions />
    </div>
  );
}
