import { QueryClientProvider } from '@tanstack/react-query';
import { lazy, Suspense, useEffect } from 'react';
import { Route, Router, Switch, useLocation } from 'wouter';
import { makeQueryClient, subscribe } from './api.ts';
import { useLedgerLocation } from './location.ts';
import { Frame } from './shell/frame.tsx';
import { ScreenBoundary } from './shell/screen-boundary.tsx';
import { FIRST_SCREEN, SCREENS } from './shell/screens.ts';
import { EmptyState, PageHeader } from './ui/index.ts';

const client = makeQueryClient();
const Specimens = import.meta.env.DEV ? lazy(() => import('./specimens/index.tsx')) : undefined;

/** Whatever changed in the catalogue, from this window or another door, is read again. */
function useFreshness(): void {
  useEffect(() => subscribe('changed', () => void client.invalidateQueries()), []);
}

function NowhereScreen() {
  return (
    <>
      <PageHeader title="Nothing here" />
      <EmptyState title="This address leads to no screen">Choose one from the contents.</EmptyState>
    </>
  );
}

function Screens() {
  const [path] = useLocation();
  const segment = path.split('/')[1];
  return (
    <ScreenBoundary key={segment}>
      <Suspense fallback={<p className="waiting">Opening the screen…</p>}>
        <Switch>
          <Route path="/" component={FIRST_SCREEN} />
          {SCREENS.map((entry) => (
            <Route key={entry.path} path={`${entry.path}/*?`} component={entry.screen} />
          ))}
          {Specimens ? <Route path="/_components" component={Specimens} /> : null}
          <Route component={NowhereScreen} />
        </Switch>
      </Suspense>
    </ScreenBoundary>
  );
}

/** The whole window. */
export function App() {
  useFreshness();
  return (
    <QueryClientProvider client={client}>
      <Router hook={useLedgerLocation}>
        <Frame>
          <Screens />
        </Frame>
      </Router>
    </QueryClientProvider>
  );
}
