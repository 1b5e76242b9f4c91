import { useState } from 'react';
import { Link, Route, Switch, useLocation } from 'wouter';
import { useQueryOf } from '../../api.ts';
import { useAsOf } from '../../location.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, Notice, PageHeader, Refused } from '../../ui/index.ts';
import { NewWorkDialog } from '../work/new-work-dialog.tsx';
import { useDropAnywhere } from './exchange/dropped-file.ts';
import { ExportPage } from './exchange/export-page.tsx';
import { ImportPage } from './exchange/import-page.tsx';
import { FirstRun, FirstWords } from './first-run.tsx';
import { Headline } from './headline.tsx';
import { CatalogueParts } from './overview/parts.tsx';
import { GuidedStart } from './start/guided-start.tsx';
import { useStart } from './start/use-start.ts';
import { Works } from './works.tsx';
import './catalogue.css';

/** The guided start as long as it has something to say, and the other ways while the catalogue is empty. */
function Beginning({ file, empty }: { file: string; empty: boolean }) {
  const start = useStart(file);
  const past = useAsOf().asOf !== undefined;
  return (
    <>
      {empty ? <FirstWords /> : null}
      {start.shown && (empty || !past) ? <GuidedStart start={start} /> : null}
      {empty && start.shown !== undefined ? (
        <FirstRun onGuide={start.shown ? undefined : () => start.resume()} />
      ) : null}
    </>
  );
}

/** What is live and what is not. */
function CataloguePage() {
  const { asOf } = useAsOf();
  const [, navigate] = useLocation();
  const [creating, setCreating] = useState(false);
  const info = useQueryOf('catalogue.info', {});
  const status = useQueryOf('catalogue.status', { asOf, withList: false }, { keep: true });
  const readOnly = useReadOnly();
  const first = info.data?.empty === true;
  const create = () => setCreating(true);
  const over = useDropAnywhere(readOnly === undefined);
  const newWork = (
    <Button kind="primary" onClick={create} disabled={readOnly !== undefined} reason={readOnly}>
      New work
    </Button>
  );
  return (
    <>
      <PageHeader
        title="Catalogue"
        lede={first || !status.data ? undefined : <Headline status={status.data} asOf={asOf} />}
        actions={
          first ? undefined : (
            <>
              <Link href="/catalogue/import" className="button button-plain">
                Import…
              </Link>
              <Link href="/catalogue/export" className="button button-plain">
                Export…
              </Link>
              {newWork}
            </>
          )
        }
      />
      {over ? <Notice>Let the file go to import it.</Notice> : null}
      <Refused refusal={status.error} />
      {info.data ? <Beginning file={info.data.file} empty={first} /> : null}
      {!first && status.data ? (
        <CatalogueParts list={<Works status={status.data} newWork={newWork} />} />
      ) : null}
      <NewWorkDialog
        open={creating}
        onClose={() => setCreating(false)}
        onCreated={(workId) => {
          setCreating(false);
          navigate(`/work/${workId}`);
        }}
      />
    </>
  );
}

/** The Catalogue screen, and the ways in and out of it. */
export default function CatalogueScreen() {
  return (
    <Switch>
      <Route path="/catalogue/export" component={ExportPage} />
      <Route path="/catalogue/import" component={ImportPage} />
      <Route component={CataloguePage} />
    </Switch>
  );
}
